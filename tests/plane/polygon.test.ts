import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { walkFaces } from '../../src/plane/faces.ts';
import { cornerAngles, extentOf, isSimple, placeIn, sideOf, touch, twiceArea } from '../../src/plane/polygon.ts';
import type { Point } from '../../src/plane/point.ts';

const at = (x: number, y: number): Point => ({ x, y });
const square = [at(0, 0), at(10, 0), at(10, 10), at(0, 10)];
/** An L: the south-east quarter is missing. */
const ell = [at(0, 0), at(20, 0), at(20, 8), at(12, 8), at(12, 20), at(0, 20)];

describe('areas', () => {
    test('clockwise on the plan is positive', () => {
        expect(twiceArea(square)).toBe(200n);
        expect(twiceArea([...square].reverse())).toBe(-200n);
        expect(twiceArea(ell)).toBe(2n * (20n * 8n + 12n * 12n));
    });
    test('exact where plain numbers are not', () => {
        const big = 3_000_000_001;
        // a parallelogram spanned by (big, 1) and (1, big - 1): big (big - 1) - 1
        expect(twiceArea([at(0, 0), at(big, 1), at(big + 1, big), at(1, big - 1)])).toBe(2n * (BigInt(big) * BigInt(big - 1) - 1n));
        expect(BigInt(2 * (big * (big - 1) - 1))).not.toBe(2n * (BigInt(big) * BigInt(big - 1) - 1n));
    });
    // Four sides 5, 6, 5, 4 on a circle enclose 24.494897, by Brahmagupta's formula: sqrt of the product of (s - side)
    test('a quadrilateral on a circle against Brahmagupta', () => {
        const sides = [5, 6, 5, 4], s = 10;
        const area = Math.sqrt(sides.reduce((product, side) => product * (s - side), 1));
        expect(area).toBeCloseTo(24.494897, 6);
        // an isosceles trapezoid of these sides: bases 6 and 4, legs 5
        const height = Math.sqrt(25 - 1), unit = 1e6;
        const trapezoid = [at(0, 0), at(4, 0), at(5, height), at(-1, height)].map(p => at(Math.round(p.x * unit), Math.round(p.y * unit)));
        expect(Number(twiceArea(trapezoid)) / 2 / unit ** 2).toBeCloseTo(24.494897, 5);
    });
});
test('corner angles, inside', () => {
    expect(cornerAngles(square)).toEqual([90, 90, 90, 90]);
    expect(cornerAngles(ell)).toEqual([90, 90, 90, 270, 90, 90]);
    expect(cornerAngles([at(0, 0), at(10, 0), at(0, 10)])).toEqual([90, 45, 45]);
    fc.assert(fc.property(fc.array(
        fc.record({ x: fc.integer({ min: -99, max: 99 }), y: fc.integer({ min: -99, max: 99 }) }), { minLength: 3, maxLength: 7 },
    ), points => {
        if (!isSimple(points)) return;
        const clockwise = twiceArea(points) > 0n ? points : [...points].reverse();
        // the angles of an n-gon add up to (n - 2) x 180
        expect(cornerAngles(clockwise).reduce((sum, angle) => sum + angle, 0)).toBeCloseTo((points.length - 2) * 180, 6);
    }), { seed: 21, numRuns: 500 });
});

test('inside, on the edge, outside', () => {
    expect([at(3, 3), at(19, 7), at(0, 5), at(12, 8), at(12, 15), at(13, 15), at(20, 8), at(-1, 0), at(21, 0)].map(point => placeIn(ell, point)))
        .toEqual(['inside', 'inside', 'edge', 'edge', 'edge', 'outside', 'edge', 'outside', 'outside']);
    // against the definition: as many rectangles of the L hold the point
    fc.assert(fc.property(fc.integer({ min: -3, max: 23 }), fc.integer({ min: -3, max: 23 }), (x, y) => {
        const within = (w: number, n: number, e: number, s: number): boolean => x > w && x < e && y > n && y < s;
        const inside = within(0, 0, 20, 8) || within(0, 0, 12, 20);
        const outside = x < 0 || y < 0 || x > 20 || y > 20 || x > 12 && y > 8;
        expect(placeIn(ell, at(x, y))).toBe(inside ? 'inside' : outside ? 'outside' : 'edge');
    }), { seed: 31, numRuns: 500 });
});

test('sides and touching stretches', () => {
    expect([at(5, 1), at(5, -1), at(20, 0)].map(point => sideOf(at(0, 0), at(10, 0), point))).toEqual([1, -1, 0]);
    expect(touch(at(0, 0), at(10, 10), at(0, 10), at(10, 0))).toBe(true);
    expect(touch(at(0, 0), at(10, 0), at(10, 0), at(20, 5))).toBe(true);
    expect(touch(at(0, 0), at(10, 0), at(11, 0), at(20, 0))).toBe(false);
    expect(touch(at(0, 0), at(10, 0), at(3, 1), at(4, 9))).toBe(false);
});

test('a polygon that crosses or touches itself is not simple', () => {
    expect(isSimple(ell)).toBe(true);
    expect(isSimple([at(0, 0), at(10, 10), at(10, 0), at(0, 10)])).toBe(false);
    expect(isSimple([at(0, 0), at(10, 0), at(5, 0)])).toBe(false);
    expect(isSimple([at(0, 0), at(10, 0), at(10, 0), at(0, 5)])).toBe(false);
    expect(isSimple([at(0, 0), at(10, 0), at(10, 10), at(5, 0), at(0, 10)])).toBe(false);
    expect(isSimple([at(0, 0), at(1, 1)])).toBe(false);
});

test('how far a polygon reaches', () => {
    expect(extentOf(ell)).toEqual({ west: 0, east: 20, north: 0, south: 20 });
});

test('faces: edges walked by who follows whom', () => {
    // two squares side by side, their edges by name
    const follows: Record<string, string | undefined> = { an: 'ae', ae: 'as', as: 'aw', aw: 'an', bn: 'be', be: 'bs', bs: 'bw', bw: 'bn', lost: 'away' };
    const { loops, open } = walkFaces(Object.keys(follows), edge => follows[edge]);
    expect(loops).toEqual([['an', 'ae', 'as', 'aw'], ['bn', 'be', 'bs', 'bw']]);
    expect(open).toEqual(['lost', 'away']);
});
