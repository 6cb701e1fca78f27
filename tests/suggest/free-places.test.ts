import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inZone, nearestFree, seenFrom } from '../../src/suggest/free-places.ts';

const zones = fc.array(fc.tuple(fc.integer({ min: -60, max: 60 }), fc.integer({ min: 1, max: 30 })).map(([from, long]) => ({ from, to: from + long, what: '' })), { maxLength: 8 });

describe('places that no zone holds', () => {
    test('the nearest below and above are those that looking at every place finds', () => {
        fc.assert(fc.property(zones, fc.integer({ min: 0, max: 50 }), (all, most) => {
            const free = (place: number): boolean => !inZone(all, place);
            const near = [-1, 1].flatMap(way => Array.from({ length: most + 1 }, (_, i) => way * i).find(free) ?? []);
            expect(nearestFree(all, most).map(place => place + 0)).toEqual(free(0) ? [0] : near);
        }), { seed: 5, numRuns: 2000 });
    });
    test('zones that only touch leave the place between them free', () => {
        expect(nearestFree([{ from: -5, to: 2, what: '' }, { from: 2, to: 9, what: '' }], 20)).toEqual([-5, 2]);
    });
    test('seen from a line that moves against the others, a zone lies on the other side', () => {
        expect(seenFrom([{ from: 10, to: 14, what: 'a' }], 12, -0.5)).toEqual([{ from: -4, to: 4, what: 'a' }]);
        expect(seenFrom([{ from: 10, to: 14, what: 'a' }], 12, 0)).toBe(null);
        expect(seenFrom([{ from: 10, to: 14, what: 'a' }], 9, 0)).toEqual([]);
    });
});
