import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { degreesOf } from '../../src/plane/angle.ts';
import { differenceOver, signOfDifference } from '../../src/plane/exact.ts';
import { crossing, directionOf, distanceFrom, lineBetween, lineThrough, offset, squareThrough, turn, turnedRound } from '../../src/plane/line.ts';
import { distance, primitive, reach, type Point } from '../../src/plane/point.ts';
import { Rational } from '../../src/quantity/rational.ts';

/** As far as a big room's walls in fractions of a tick. */
const FAR = 10_000_000_000;
const coordinate = fc.integer({ min: -FAR, max: FAR });
const points: fc.Arbitrary<Point> = fc.record({ x: coordinate, y: coordinate });
const directions = fc.record({ x: fc.integer({ min: -9_000_000, max: 9_000_000 }), y: fc.integer({ min: -9_000_000, max: 9_000_000 }) })
    .filter(({ x, y }) => x !== 0 || y !== 0);
const diagonal = fc.constantFrom({ x: 1, y: 1 }, { x: 1, y: -1 }, { x: -1, y: 1 }, { x: -1, y: -1 });
const axis = fc.constantFrom({ x: 1, y: 0 }, { x: 0, y: 1 }, { x: -1, y: 0 }, { x: 0, y: -1 });

describe('sums of products', () => {
    const whole = fc.integer({ min: -Number.MAX_SAFE_INTEGER, max: Number.MAX_SAFE_INTEGER });
    test('the sign is that of the exact sum', () => {
        fc.assert(fc.property(whole, whole, whole, whole, (a, d, b, c) => {
            const exact = BigInt(a) * BigInt(d) - BigInt(b) * BigInt(c);
            expect(signOfDifference(a, d, b, c)).toBe(exact > 0n ? 1 : exact < 0n ? -1 : 0);
        }), { seed: 21, numRuns: 500 });
        // a difference that plain numbers do not see: (2^52)^2 - (2^52 - 1)(2^52 + 1) = 1
        const big = 2 ** 52;
        expect(big * big - (big - 1) * (big + 1)).toBe(0);
        expect(signOfDifference(big, big, big - 1, big + 1)).toBe(1);
    });
    test('the quotient is the nearest whole number', () => {
        const far = fc.integer({ min: -1e8, max: 1e8 });
        fc.assert(fc.property(fc.oneof(
            whole, far,
        ), far, fc.oneof(whole, far), far, fc.oneof(fc.constantFrom(1, -1, 2, -2), far).filter(by => by !== 0), (a, d, b, c, by) => {
            const exact = new Rational(BigInt(a) * BigInt(d) - BigInt(b) * BigInt(c), 1n).div(by);
            const off = exact.sub(new Rational(BigInt(differenceOver(a, d, b, c, by)), 1n)).abs();
            // past 2^53 the answer itself is the nearest plain number
            const slack = exact.abs().compare(Number.MAX_SAFE_INTEGER) > 0 ? exact.abs().div(2n ** 53n) : new Rational(0);
            expect(off.compare(new Rational(1, 2).add(slack))).toBeLessThanOrEqual(0);
        }), { seed: 22, numRuns: 500 });
        expect([3, -3, 5].map(n => differenceOver(n, 1, 0, 0, 2))).toEqual([2, -1, 3]);
        expect(differenceOver(-3, 1, 0, 0, -6)).toBe(1);
        expect(differenceOver(3, 1, 0, 0, -6)).toBe(0);
    });
    test('a quotient is told from the half beside it, however large the products are', () => {
        const large = fc.integer({ min: -(2 ** 48), max: 2 ** 48 });
        fc.assert(fc.property(large, large, large, large, fc.integer({ min: -1000, max: 1000 }), fc.integer({ min: -1, max: 1 }), (a, d, b, c, q, beside) => {
            const over = BigInt(a) * BigInt(d) - BigInt(b) * BigInt(c);
            // half of an odd multiple of it is as near to the difference as whole numbers come
            const by = Number(2n * over / BigInt(2 * q + 1)) + beside;
            fc.pre(by !== 0);
            const twice = 2n * over + BigInt(by), under = 2n * BigInt(by), quotient = twice / under;
            const less = (twice < 0n) !== (under < 0n) && twice % under !== 0n;
            expect(BigInt(differenceOver(a, d, b, c, by))).toBe(less ? quotient - 1n : quotient);
        }), { seed: 23, numRuns: 500 });
    });
});

describe('lines', () => {
    test('right of east is south, and an offset lies so far to the right', () => {
        const east = lineThrough({ x: 0, y: 10 }, { x: 5, y: 0 });
        expect(directionOf(east)).toEqual({ x: 1, y: 0 });
        expect(crossing(offset(east, 7), lineThrough({ x: 3, y: 0 }, { x: 0, y: 1 }))).toEqual({ x: 3, y: 17 });
        expect(distanceFrom(east, { x: 99, y: 12 })).toBe(2);
        expect(distanceFrom(turnedRound(east), { x: 99, y: 12 })).toBe(-2);
        const south = lineThrough({ x: 4, y: 0 }, { x: 0, y: 2 });
        expect(distanceFrom(south, { x: 0, y: 0 })).toBe(4);
        expect([turn(east, south), turn(south, east), turn(east, turnedRound(east))]).toEqual([1, -1, 0]);
        expect(directionOf(squareThrough(east, { x: 0, y: 0 }))).toEqual({ x: 0, y: 1 });
    });

    test('a crossing is the nearest point to the exact one, in whatever order the two are named', () => {
        fc.assert(fc.property(points, directions, points, directions, (p, d, q, e) => {
            const l = lineThrough(p, d), m = lineThrough(q, e);
            const at = crossing(l, m);
            const under = BigInt(l.a) * BigInt(m.b) - BigInt(m.a) * BigInt(l.b);
            if (!at) return expect(under).toBe(0n);
            expect(crossing(m, l)).toEqual(at);
            for (const [value, over] of [
                [at.x, BigInt(l.c) * BigInt(m.b) - BigInt(m.c) * BigInt(l.b)], [at.y, BigInt(l.a) * BigInt(m.c) - BigInt(m.a) * BigInt(l.c)],
            ] as const) {
                if (Math.abs(value) > FAR * 100) continue;       // nearly parallel lines cross far away
                expect(new Rational(over, 1n).div(new Rational(under, 1n)).sub(value).abs().compare(new Rational(1, 2))).toBeLessThanOrEqual(0);
            }
        }), { seed: 23, numRuns: 500 });
    });

    test('along the axes and at 45 degrees every crossing is exact', () => {
        const even = coordinate.map(n => 2 * Math.round(n / 2));
        const evenPoints = fc.record({ x: even, y: even });
        fc.assert(fc.property(evenPoints, fc.oneof(axis, diagonal), even, evenPoints, fc.oneof(axis, diagonal), even, (p, d, off, q, e, offOther) => {
            const l = offset(lineThrough(p, d), off), m = offset(lineThrough(q, e), offOther);
            const at = crossing(l, m);
            if (!at) return;
            expect(l.a * at.x + l.b * at.y).toBe(l.c);
            expect(m.a * at.x + m.b * at.y).toBe(m.c);
        }), { seed: 24, numRuns: 500 });
    });

    test('an offset is as far off as was asked, to a unit', () => {
        fc.assert(fc.property(points, directions, fc.integer({ min: -1_000_000, max: 1_000_000 }), (p, d, off) => {
            const line = lineThrough(p, d);
            const moved = offset(line, off);
            expect(Math.abs(Number(BigInt(moved.c) - BigInt(line.c)) / Math.hypot(line.a, line.b) - off)).toBeLessThanOrEqual(0.8);
        }), { seed: 25, numRuns: 500 });
    });

    test('a line between two points runs through both', () => {
        fc.assert(fc.property(fc.record({ x: fc.integer({ min: -1e7, max: 1e7 }), y: fc.integer({ min: -1e7, max: 1e7 }) }), directions, (from, d) => {
            const to = { x: from.x + d.x, y: from.y + d.y };
            const line = lineBetween(from, to)!;
            for (const { x, y } of [from, to]) expect(line.a * x + line.b * y).toBe(line.c);
            expect(primitive(d)).toEqual(directionOf(line));
            expect(reach(from, to, d)).toBeCloseTo(distance(from, to), 3);
            expect(reach(to, from, d)).toBeCloseTo(-distance(from, to), 3);
        }), { seed: 26, numRuns: 500 });
        expect(lineBetween({ x: 1, y: 1 }, { x: 1, y: 1 })).toBeUndefined();
    });
});

test('angles of the compass are exact, others are those of the tangent', () => {
    expect([[1, 0], [1, 1], [0, 1], [-1, 1], [-1, 0], [-1, -1], [0, -1], [1, -1]].map(([x, y]) => degreesOf(y!, x!)))
        .toEqual([0, 45, 90, 135, 180, -135, -90, -45]);
    expect(degreesOf(3, 4)).toBeCloseTo(36.8699, 4);
    expect(degreesOf(-24, 7)).toBeCloseTo(-73.7398, 4);
});
