import { expect, test } from 'vitest';
import { progressText } from '../../src/cli/prove.ts';

test('while boards are looked for: stocks that are done, and how far the one it is at may be above its cheapest, never too little', () => {
    expect(progressText(3, 0)).toBe('Looking for the cheapest boards: 0 of 3 stocks done … Ctrl+C takes the best so far.');
    expect(progressText(3, 1, { cost: 10_111, bound: 10_000 })).toContain('1 of 3 stocks done, the next at most 1.2 % above its cheapest …');
    // no bound is known yet, or none cheaper exists
    for (const at of [{ cost: 5, bound: 0 }, { cost: 5, bound: 5 }]) expect(progressText(1, 0, at)).toContain('0 of 1 stock done …');
});
