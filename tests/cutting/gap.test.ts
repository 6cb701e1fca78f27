import { expect, test } from 'vitest';
import { gapOf } from '../../src/cutting/gap.ts';

type Args = Parameters<typeof gapOf>;

/** What is asked and answered, as far as a gap needs it: one layout of this cost over this bound. */
function gap(cost: number, bound: number): number | undefined {
    return gapOf({ problem: { boards: [{ cost }] } } as unknown as Args[0], { layouts: [{ board: 0, times: 1 }], bound } as unknown as Args[1]);
}

test('by how many percent a plan may be above the cheapest: rounded up to a tenth, and not beyond', () => {
    expect([gap(1004, 1000), gap(1004.1, 1000), gap(1001, 1000)]).toEqual([0.4, 0.5, 0.1]);
    expect([gap(1000, 1000), gap(1000, 0)]).toEqual([undefined, undefined]);
});
