import type { Reason } from './model.ts';

/** Why one piece waits for another: `the cleat waits for the side, since it …`. */
export const WHY: Readonly<Record<Reason, string>> = {
    carries: 'is fastened to it', 'in-the-way': 'would not get past it', 'runs-through': 'has biscuits in its edge', custom: 'is fitted to its edge', spliced: 'is pushed onto its biscuits', 'ends-at': 'ends at its face',
    last: 'goes up last', said: 'is written to come after it',
};
