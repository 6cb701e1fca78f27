import type { Answer, Asked } from './questions.ts';
import { costOfLayouts } from './solve/problem.ts';

/** What a quotient of plain numbers is off by, at the most. */
const NOISE = 1e-9;

/** By how many percent the plan may be above the cheapest, upward to a tenth, and at least that; undefined where it is the cheapest, or nothing is known. */
export function gapOf({ problem }: Asked, { layouts, bound }: Answer): number | undefined {
    const cost = costOfLayouts(problem, layouts);
    return bound > 0 && cost > bound ? Math.max(1, Math.ceil((cost - bound) / bound * 1000 - NOISE)) / 10 : undefined;
}
