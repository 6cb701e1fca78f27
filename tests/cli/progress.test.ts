import { expect, test } from 'vitest';
import { progressText } from '../../src/cli/prove.ts';
import { gapOf } from '../../src/cutting/gap.ts';

test('while boards are looked for: stocks that are done, and how far the one it is at may be above its cheapest, never too little', () => {
    expect(progressText(3, 0)).toBe('Looking for the cheapest boards: 0 of 3 stocks done …');
    expect(progressText(3, 1, 1.2)).toContain('1 of 3 stocks done, the next at most 1.2 % above the cheapest …');
    expect(progressText(1, 0)).toContain('0 of 1 stock done …');
});

test('a plan may be as far above the cheapest as its bound is below it, rounded up; nothing is said where no bound is known, or none cheaper exists', () => {
    const board = { capacity: 10, cost: 10_111, available: null, across: 1 };
    const problem = { items: [{ size: 5, count: 1, lanes: [0] }], boards: [board], strips: [] };
    const layouts = [{ board: 0, times: 1, strips: [{ lane: 0, picks: [[0, 1] as const] }] }];
    expect([10_000, 0, 10_111].map(bound => gapOf({ problem, layouts }, { layouts, bound }))).toEqual([1.2, undefined, undefined]);
});
