import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Abreast } from '../../../src/cutting/solve/abreast.ts';
import { Effort } from '../../../src/cutting/solve/effort.ts';
import { columnsWithin } from '../../../src/cutting/solve/enumerate.ts';
import { picksOf } from '../../../src/cutting/solve/layouts.ts';
import { Pricing } from '../../../src/cutting/solve/pricing.ts';
import type { CuttingProblem } from '../../../src/cutting/solve/problem.ts';
import { rippingsOf } from '../../../src/cutting/solve/rippings.ts';
import { SectionTables } from '../../../src/cutting/solve/sections.ts';
import { runs } from '../../support/full.ts';

/** What is too much to be looked at in whole is looked at less exactly, and says so; what is claimed then holds all the same. */
const effort = (): Effort => new Effort(Infinity);
const board = (capacity: number, across = 1) => ({ capacity, cost: 1, available: null, across });
const piece = (size: number, lane = 0, count = 3) => ({ size, count, lanes: [lane] });
const noPrices = (problem: CuttingProblem) => ({ items: problem.items.map(() => 1), boards: problem.boards.map(() => 0), sections: [] });

describe('ways to rip', () => {
    // of 1 and 600 out of 1000 two leave no room: 1000 of the one, or 400 of it beside one of the other; they are found by trying every number of the first
    test('are given up where they take too long to find, even if they are few', () => {
        expect(rippingsOf([1, 600], [1, 2], 1000, 200)).toEqual([[1000, 0], [400, 1]]);
        expect(rippingsOf([1, 600], [1, 2], 1000, 20)).toBeUndefined();
    });
    const strips = [2, 3, 5, 7, 11];
    const tablesOf = (...boards: CuttingProblem['boards']): SectionTables => {
        const problem: CuttingProblem = { items: strips.map((_, i) => piece(6 + i, i + 1)), boards, strips, shortestSection: 5 };
        return new SectionTables(problem, problem.items.map(({ count }) => count), effort());
    };
    test('where one of the boards has too many of them, what is found need not be the best', () => {
        // 11 is a sum of primes in 6 ways, and 12 in 7
        expect(rippingsOf(strips, [1, 2, 3, 4, 5], 12, 300)).toHaveLength(13);
        expect(rippingsOf(strips, [1, 2, 3, 4, 5], 90, 300)).toBeUndefined();
        const [few, many] = [board(40, 12), board(40, 90)], exact = (...boards: CuttingProblem['boards']): boolean => tablesOf(...boards).isExact;
        expect([exact(few), exact(many), exact(few, many), exact(many, few)]).toEqual([true, false, false, false]);
    });
    test('nor where a board has very many places for a cut', () => {
        expect([16_384, 16_385].map(capacity => tablesOf(board(capacity, 12)).isExact)).toEqual([true, false]);
    });
    test('no content that can be told is worth more than what is said at most', () => {
        fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 5, maxLength: 5 }), values => {
            for (const own of [[board(40, 90)], [board(61, 90), board(40, 12)], [board(20_000, 12)]]) {
                const tables = tablesOf(...own), most = tables.worth(values, 'at most'), cut = tables.worth(values, 'cut');
                most.forEach((worth, k) => expect(worth).toBeGreaterThanOrEqual(cut[k]!));
                own.forEach((_, k) => {
                    const told = picksOf(tables.content(k)).reduce((sum, [item, count]) => sum + values[item]! * count, 0);
                    expect(told).toBeLessThanOrEqual(most[k]!);
                });
            }
        }), { seed: 95, numRuns: runs(60, 10) });
    });
});

describe('tables that are too large for a machine', () => {
    test('of the contents of a board: none is listed, and none offered', () => {
        // 12 million cells are listed at the most: 12 lengths by a million places, and no more; by tables 150 million, each length in lots of 1 and 2
        const of = (lengths: number, capacity: number): CuttingProblem =>
            ({ items: Array.from({ length: lengths }, (_, i) => piece(capacity - i)), boards: [board(capacity)], strips: [] });
        const listed = (problem: CuttingProblem): number | undefined => columnsWithin(problem, noPrices(problem), [true], 0, 100, effort())?.length;
        expect([listed(of(12, 999_999)), listed(of(12, 1_000_000))]).toEqual([12, undefined]);
        const offered = (problem: CuttingProblem): unknown => {
            const pricing = new Pricing(problem, problem.items.map(() => 3), effort());
            return [pricing.offerByTables(noPrices(problem), [true])?.worth, pricing.worthOfBoards(problem.items.map(() => 1))];
        };
        // of pieces nearly as long as the board one fits
        expect([offered(of(15, 999_999)), offered(of(151, 999_999))]).toEqual([[[1], [1]], [undefined, undefined]]);
    });
    test('of strips abreast: as many times the best strip, which is no less', () => {
        // one piece of 6 is wanted on strips of 10: two of them would seem worth twice as much
        const at = (scale: number): number => {
            const sizes = [6 * scale, 5 * scale], places = [10 * scale], strip = new Float64Array(10 * scale + 1).fill(7);
            const abreast = new Abreast(sizes, [1, 1], [0, 1], places, 2, effort());
            abreast.fill([7, 4], strip);
            return abreast.at(2, 0);
        };
        // 11 places in all by two lots, as long as all pieces are together: up to two million cells
        expect([at(1), at(90_000), at(100_000)]).toEqual([11, 11, 14]);
    });
});
