import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { matchInOrder } from '../../src/changes/in-order.ts';
import { runs } from '../support/full.ts';

const places = fc.uniqueArray(fc.integer({ min: 0, max: 400 }), { maxLength: 6 }).map(list => list.sort((a, b) => a - b));

/** The least sum of distances with all of the shorter list paired, in order: by trying every choice. */
function least(few: readonly number[], many: readonly number[]): number {
    if (few.length === 0) return 0;
    let best = Infinity;
    for (let j = 0; j <= many.length - few.length; j++) best = Math.min(best, Math.abs(few[0]! - many[j]!) + least(few.slice(1), many.slice(j + 1)));
    return best;
}

describe('places of two lists in pairs', () => {
    test('each once, in order, the shorter list whole, as near as any way', () => {
        fc.assert(fc.property(places, places, (before, after) => {
            const pairs = matchInOrder(before, after);
            expect(pairs.flatMap(([i]) => i ?? [])).toEqual(before.map((_, i) => i));
            expect(pairs.flatMap(([, j]) => j ?? [])).toEqual(after.map((_, j) => j));
            const both = pairs.filter(([i, j]) => i !== undefined && j !== undefined);
            expect(both).toHaveLength(Math.min(before.length, after.length));
            const [few, many] = before.length <= after.length ? [before, after] : [after, before];
            expect(both.reduce((sum, [i, j]) => sum + Math.abs(before[i!]! - after[j!]!), 0)).toBe(least(few, many));
        }), { seed: 3, numRuns: runs(3000, 300) });
    });

    test('a line that comes between two others leaves them what they are', () => {
        expect(matchInOrder([100, 200], [98, 150, 203])).toEqual([[0, 0], [undefined, 1], [1, 2]]);
        expect(matchInOrder([98, 150, 203], [100, 200])).toEqual([[0, 0], [1, undefined], [2, 1]]);
    });
});
