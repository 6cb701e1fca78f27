import { expect, test } from 'vitest';
import { blankOf, type Blank } from '../../src/cutting/blank.ts';
import { offersOf } from '../../src/cutting/offers.ts';
import { pose } from '../../src/cutting/pose.ts';
import { inches } from '../../src/quantity/rational.ts';
import { job, piece, stock } from './samples.ts';

/** Which lanes a strip of this length may be cut in: 0 is the whole board, crosscut first and ripped then; 1 its strip, ripped first. */
function lanes(length: string): readonly number[] {
    const pine = stock();
    const strip = blankOf(piece('c', pine, inches(length), { width: inches('3/4') }), job()) as Blank;
    return pose(pine, [strip], offersOf(pine, job()), job(), []).problem.items[0]!.lanes;
}

test('nothing shorter than 12" is ripped by itself: it comes off a strip', () => {
    expect(lanes('12')).toEqual([0, 1]);
    expect(lanes('11 31/32')).toEqual([1]);
});
