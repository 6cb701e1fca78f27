import type { Answer, Asked } from './questions.ts';
import { costOfLayouts } from './solve/problem.ts';

/** By how many percent the plan may be above the cheapest, rounded up to a tenth; undefined where it is the cheapest, or nothing is known. */
export function gapOf({ problem }: Asked, { layouts, bound }: Answer): number | undefined {
    const cost = costOfLayouts(problem, layouts);
    return bound > 0 && cost > bound ? Math.ceil((cost / bound - 1) * 1000) / 10 : undefined;
}
