import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { GaugeLog } from '../../src/job/model.ts';
import { chanceOf, driftOf, LOOK, readingsToTell, SCRAP } from '../../src/measure/drift.ts';
import { runs } from '../support/full.ts';

const INCH = 16256;
const at = { uri: 'file:///a.coffer', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } } };
const log = (readings: readonly number[], meant: number, every = 5): GaugeLog =>
    ({ at, readings: readings.map(inches => Math.round(inches * INCH)), meant: { value: Math.round(meant * INCH), at, said: true }, every });

describe('how often chance makes so clear a trend', () => {
    // upper tails of Kendall's S, as tables of it have them (M. G. Kendall, Rank Correlation Methods; also Hollander and Wolfe), to three places: from memory
    test.each([
        [4, 4, 0.167], [4, 6, 0.042], [5, 6, 0.117], [5, 8, 0.042], [5, 10, 0.008], [6, 9, 0.068], [6, 11, 0.028], [7, 11, 0.068], [7, 13, 0.035],
        [8, 14, 0.054], [8, 16, 0.031], [9, 16, 0.060], [9, 18, 0.038], [10, 19, 0.054], [10, 21, 0.036],
    ])('%i readings, S %i: %f', (n, s, chance) => {
        expect(chanceOf(n, s)).toBeCloseTo(chance, 3);
    });

    test('as all orders of a few readings are counted one by one', () => {
        const orders = (left: readonly number[]): number[][] =>
            (left.length === 0 ? [[]] : left.flatMap((first, i) => orders(left.toSpliced(i, 1)).map(rest => [first, ...rest])));
        const rises = (order: readonly number[]): number =>
            order.reduce((sum, a, i) => sum + order.slice(i + 1).reduce((more, b) => more + Math.sign(b - a), 0), 0);
        for (const n of [2, 3, 4, 5, 6]) {
            const sums = orders(Array.from({ length: n }, (_, i) => i)).map(rises);
            for (let s = -n * (n - 1) / 2; s <= n * (n - 1) / 2; s++) expect(chanceOf(n, s)).toBeCloseTo(sums.filter(sum => sum >= s).length / sums.length, 10);
        }
    });

    test('of many by the normal distribution, as near as it comes there', () => {
        for (const s of [0, 60, 150, 250]) expect(Math.abs(chanceOf(41, s) - chanceOf(40, s * Math.sqrt(40 * 39 * 85 / (41 * 40 * 87))))).toBeLessThan(0.01);
    });
});

describe('a cutter', () => {
    test('that slides evenly is found with its rate, whatever one bad reading says, and told before it spoils a board', () => {
        const rates = fc.double({ min: 0.001, max: 0.004, noNaN: true }), counts = fc.integer({ min: 7, max: 12 });
        fc.assert(fc.property(rates, counts, fc.nat(6), fc.constantFrom(1, -1), (rate, n, bad, sign) => {
            const readings = Array.from({ length: n }, (_, i) => 0.25 + sign * rate * i + (i === bad ? -sign * 0.05 : 0));
            const drift = driftOf(log(readings, 0.25));
            expect(drift.slope / INCH).toBeCloseTo(sign * rate, 3);
            // with all of its readings good it is told as soon as there are four
            const good = driftOf(log(readings.map((_, i) => 0.25 + sign * rate * i), 0.25));
            expect(good.creeps).toBe(true);
            const off = rate * (n - 1) * INCH, left = (limit: number): number => Math.max(0, (limit - off) / (rate * INCH) * 5);
            expect(Math.abs(good.untilLook! - left(LOOK))).toBeLessThan(2);
            expect(Math.abs(good.untilScrap! - left(SCRAP))).toBeLessThan(2);
        }), { seed: 11, numRuns: runs(200) });
    });

    test('that does not is told to in hardly more than one of twenty logs, up or down each', () => {
        let told = 0, tried = 0;
        fc.assert(fc.property(fc.array(fc.double({ min: -0.004, max: 0.004, noNaN: true }), { minLength: 8, maxLength: 8 }), offs => {
            tried++;
            if (driftOf(log(offs.map(off => 0.25 + off), 0.25)).creeps) told++;
        }), { seed: 5, numRuns: 600 });
        expect(told / tried).toBeLessThan(0.1);
    });

    test('of which too little is known says nothing', () => {
        expect(driftOf(log([0.25, 0.26, 0.27], 0.25)).creeps).toBe(false);
        expect(driftOf(log([0.25], 0.25))).toMatchObject({ slope: 0, creeps: false, worst: { off: 0, reading: 1 } });
        // finer than any caliper
        expect(driftOf(log([0.25, 0.2502, 0.2504, 0.2506], 0.25)).creeps).toBe(false);
    });
});

test('a slow creep is told by so many readings that a caliper shows it, and never as nothing', () => {
    expect([0.001, 0.0005, 0.0004, 0.00005, 0.00004].map(inches => readingsToTell(-inches * INCH))).toEqual([1, 1, 10, 10, 100]);
});
