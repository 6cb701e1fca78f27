import { expect, test } from 'vitest';
import { blankOf, type Blank } from '../../src/cutting/blank.ts';
import { offersOf } from '../../src/cutting/offers.ts';
import { pose } from '../../src/cutting/pose.ts';
import { inches } from '../../src/quantity/rational.ts';
import { job, piece, stock } from './samples.ts';

const pine = stock();
const posed = (...cuts: readonly (readonly [length: string, width: string])[]) => {
    const blanks = cuts.map(([length, width], i) => blankOf(piece(`c${i}`, pine, inches(length), { width: inches(width) }), job()) as Blank);
    return pose(pine, blanks, offersOf(pine, job()), job(), []);
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
