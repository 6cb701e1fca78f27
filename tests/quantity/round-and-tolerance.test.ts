import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Measure } from '../../src/quantity/measure.ts';
import { inches } from '../../src/quantity/rational.ts';
import { roundDown, roundTo, roundUp } from '../../src/quantity/round.ts';
import { exactly, minus, plus, rootSumSquare, times, within, worstCase } from '../../src/quantity/tolerance.ts';
import { runs } from '../support/full.ts';

const SEED = { seed: 1_066, numRuns: runs(1000) };

describe('rounding to what the tape shows', () => {
    const ticks = fc.integer({ min: -1e12, max: 1e12 });
    const step = fc.integer({ min: 1, max: 100_000 });

    test('is the nearest multiple, symmetric about zero, and rounding again changes nothing', () => {
        fc.assert(fc.property(ticks, step, (t, s) => {
            const rounded = roundTo(t, s);
            expect(Math.abs(rounded % s)).toBe(0);
            expect(2 * Math.abs(rounded - t)).toBeLessThanOrEqual(s);
            expect(roundTo(-t, s) + rounded).toBe(0);
            expect(roundTo(rounded, s)).toBe(rounded);
        }), SEED);
    });

    test('down and up are the neighbors', () => {
        fc.assert(fc.property(ticks, step, (t, s) => {
            const [down, up] = [roundDown(t, s), roundUp(t, s)];
            expect(down).toBeLessThanOrEqual(t);
            expect(up).toBeGreaterThanOrEqual(t);
            expect(up - down).toBe(t % s === 0 ? 0 : s);
        }), SEED);
    });

    test('a half goes away from zero', () => {
        const [half, step] = [inches('1/64'), inches('1/32')];
        expect(roundTo(half, step)).toBe(step);
        expect(roundTo(-half, step)).toBe(-step);
        expect(roundTo(half - 1, step)).toBe(0);
    });

    test('what fractions have lost does not cost a step', () => {
        expect([roundDown(5080 - 1 / 64, 508), roundDown(5080 + 1 / 64, 508)]).toEqual([5080, 5080]);
        expect([roundUp(5080 + 1 / 64, 508), roundDown(-1 / 64 - 508, 508)]).toEqual([5080, -508]);
        expect([roundDown(5079.5, 508), roundUp(5080.5, 508)]).toEqual([4572, 5588]);
    });

    test('without a step there is nothing to round to', () => {
        for (const step of [0, -1, Number.NaN]) expect([roundTo(5, step), roundDown(5, step), roundUp(5, step)]).toEqual([5, 5, 5]);
    });
});

describe('tolerances', () => {
    const cause = fc.constantFrom('rip 1', 'rip 2', 'router', 'stop', 'planer');
    const measure: fc.Arbitrary<Measure> = fc
        .tuple(fc.integer({ min: -1e9, max: 1e9 }), fc.array(fc.tuple(cause, fc.integer({ min: -1000, max: 1000 })), { maxLength: 6 }))
        .map(([ticks, terms]) => terms.reduce((sum, [c, reach]) => plus(sum, within(0, c, reach)), exactly(ticks)));

    test('what shares its cause cancels: a length less itself is nothing, without error', () => {
        fc.assert(fc.property(measure, m => { expect(minus(m, m)).toEqual(exactly(0)); }), SEED);
    });

    test('an error of nothing is none', () => {
        expect([within(7, 'stop', 0), exactly(7)]).toEqual([{ ticks: 7, tolerance: [] }, { ticks: 7, tolerance: [] }]);
        expect(within(7, 'stop', 2)).toEqual({ ticks: 7, tolerance: [{ cause: 'stop', reach: 2 }] });
    });

    test('what does not share its cause adds up', () => {
        const fit = minus(within(inches('5 1/2'), 'blocking board', 254), within(inches('5 1/2'), 'bottom board', 254));
        expect(fit.ticks).toBe(0);
        expect(worstCase(fit.tolerance)).toBe(508);
        expect(rootSumSquare(fit.tolerance)).toBeCloseTo(254 * Math.SQRT2, 9);
        const ripped = minus(within(inches('5 1/2'), 'fence A', 254), within(inches('5 1/2'), 'fence A', 254));
        expect(worstCase(ripped.tolerance)).toBe(0);
    });

    test('adding is in any order and any grouping the same data, sorted, no cause twice, none of reach zero', () => {
        fc.assert(fc.property(measure, measure, measure, (a, b, c) => {
            expect(plus(a, b)).toEqual(plus(b, a));
            expect(plus(plus(a, b), c)).toEqual(plus(a, plus(b, c)));
            const causes = plus(a, plus(b, c)).tolerance.map(t => t.cause);
            expect(causes).toEqual([...new Set(causes)].sort());
            expect(plus(a, b).tolerance.every(t => t.reach !== 0)).toBe(true);
        }), SEED);
    });

    test('taking off what was added gives the length back', () => {
        fc.assert(fc.property(measure, measure, (a, b) => { expect(minus(plus(a, b), b)).toEqual(a); }), SEED);
    });

    test('the worst case is never less than the root of the sum of squares, nor more than root n times it', () => {
        fc.assert(fc.property(measure, m => {
            const [worst, rss] = [worstCase(m.tolerance), rootSumSquare(m.tolerance)];
            expect(worst).toBeGreaterThanOrEqual(rss - 1e-9);
            expect(worst).toBeLessThanOrEqual(rss * Math.sqrt(m.tolerance.length) + 1e-9);
        }), SEED);
    });

    test('n times a length is the length added n times', () => {
        fc.assert(fc.property(measure, fc.integer({ min: 0, max: 12 }), (m, n) => {
            expect(times(m, n)).toEqual(Array.from({ length: n }).reduce<Measure>(sum => plus(sum, m), exactly(0)));
        }), SEED);
    });
});
