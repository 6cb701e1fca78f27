import { describe, expect, test } from 'vitest';
import { blankOf, type Blank } from '../../src/cutting/blank.ts';
import { offersOf } from '../../src/cutting/offers.ts';
import { pose } from '../../src/cutting/pose.ts';
import type { Stock } from '../../src/job/model.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import { given, job, nowhere, piece, stock } from './samples.ts';

const pine = stock();
const posed = (...cuts: readonly (readonly [length: string, width: string])[]) => {
    const blanks = cuts.map(([length, width], i) => blankOf(piece(`c${i}`, pine, inches(length), { width: inches(width) }), job()) as Blank);
    return pose(pine, blanks, offersOf(pine, job()), job(), [], true);
};
/** Which lanes pieces may be cut in: 0 is the board's whole width, 1 and on its strips. */
const lanes = (...cuts: readonly (readonly [length: string, width: string])[]): (readonly number[])[] => posed(...cuts).problem.items.map(item => item.lanes);

test('what several of come out of a width comes off a strip, and no section shorter than 12" is ripped', () => {
    expect(lanes(['12', '3/4'])).toEqual([[1]]);
    expect(lanes(['11 31/32', '3/4'])).toEqual([[1]]);
    const { problem, lengthUnit } = posed(['40', '3/4']);
    expect(problem.shortestSection! * lengthUnit).toBeGreaterThanOrEqual(inches('12 1/8'));
    expect((problem.shortestSection! - 1) * lengthUnit).toBeLessThan(inches('12 1/8'));
});
test('what fills most of the width may be cut off and ripped alone where it is too short for a section', () => {
    expect(lanes(['11', '4'], ['12', '3/4'])).toEqual([[2], [0, 1]]);
    expect(lanes(['13', '4'], ['12', '3/4'])).toEqual([[1], [2]]);
});
test('a width is ripped first only where two of it come out of the board, or one with another beside it', () => {
    const widths = (...cuts: readonly (readonly [length: string, width: string])[]) => posed(...cuts).widths.slice(1);
    // of 5 1/2": two of 2 11/16" and a kerf of 1/8" are just that; of 2 23/32" there is one
    expect(widths(['40', '2 11/16'])).toEqual([inches('2 11/16')]);
    expect(widths(['40', '2 23/32'])).toEqual([]);
    // 4 5/8", a kerf and a cleat of 3/4" are 5 1/2"; a hair wider, and no cleat lies beside it
    expect(widths(['40', '4 5/8'], ['40', '3/4'])).toEqual([inches('4 5/8'), inches('3/4')]);
    expect(widths(['40', '4 21/32'], ['40', '3/4'])).toEqual([inches('3/4')]);
});
test('a section of just 12" is ripped: what is as long need not be cut off first', () => {
    expect(lanes(['12', '4'], ['12', '3/4'])).toEqual([[1], [2]]);
    expect(lanes(['11 31/32', '4'], ['12', '3/4'])).toEqual([[2], [0, 1]]);
});
describe('a bound is one of the job only where nothing was rounded', () => {
    const bare = job({ kerf: given(1), endTrim: given(0) });
    const exactly = (boardLength: number, price: string): boolean => {
        const of: Stock = {
            ...stock({ feet: [] }), lengths: [given(boardLength)],
            prices: [{ perTick: new Rational(price).div(boardLength), currency: 'USD', for: given(boardLength), at: nowhere }],
        };
        // 5007 + 1 and 6010 + 1 ticks have no common divisor, so that the grid is one tick
        const blanks = [5007, 6010].map((length, i) => blankOf(piece(`c${i}`, of, length), bare) as Blank);
        return pose(of, blanks, offersOf(of, bare), bare, [], true).exact;
    };
    test('lengths, up to 65,536 steps of their grid a board', () => {
        expect([exactly(65_535, '3'), exactly(65_536, '3')]).toEqual([true, false]);
    });
    test('where they are rounded pieces are taken longer and boards shorter, by less than a unit', () => {
        const of = stock({ feet: [8, 16], perFoot: '2' }), lengths = [inches(40) + 1, inches(29) + 4], fine = job({ kerf: given(1537) });
        const { problem, lengthUnit, exact } = pose(of, lengths.map((length, i) => blankOf(piece(`c${i}`, of, length), fine) as Blank), offersOf(of, fine), fine, [], true);
        expect(exact).toBe(false);
        expect(Math.max(...problem.boards.map(({ capacity }) => capacity))).toBeGreaterThan(32_768);
        for (const [i, { size }] of problem.items.entries()) {
            expect(size * lengthUnit).toBeGreaterThanOrEqual(lengths[i]! + 1537);
            expect((size - 1) * lengthUnit).toBeLessThan(lengths[i]! + 1537);
        }
        for (const [i, { capacity }] of problem.boards.entries()) {
            const usable = [96, 192].map(length => inches(length) - inches(1) + 1537)[i]!;
            expect(capacity * lengthUnit).toBeLessThanOrEqual(usable);
            expect((capacity + 1) * lengthUnit).toBeGreaterThan(usable);
        }
    });
    test('prices, up to a millionth', () => {
        expect([exactly(65_000, '3.000001'), exactly(65_000, '3.0000001')]).toEqual([true, false]);
    });
});
