import { expect, test } from 'vitest';
import { gapOf } from '../../src/cutting/gap.ts';

/** What is asked and answered, as far as a gap needs it: one layout of this cost over this bound. */
const gap = (cost: number, bound: number): number | undefined => gapOf({ problem: { boards: [{ cost }] } } as never, { layouts: [{ board: 0, times: 1 }], bound } as never);

test('by how many percent a plan may be above the cheapest: rounded up to a tenth, and not beyond', () => {
    expect([[1004, 1000], [1004.1, 1000], [1001, 1000], [1000, 1000], [1000, 0]].map(([cost, bound]) => gap(cost!, bound!))).toEqual([0.4, 0.5, 0.1, undefined, undefined]);
});
