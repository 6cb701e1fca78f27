import { describe, expect, test } from 'vitest';
import { bayAt, baysOf, bayStarts } from '../../src/ceiling/bays.ts';
import type { Line, WholeSection } from '../../src/ceiling/model.ts';
import { playOf, seatOf, sectionOf, sideFootOf } from '../../src/ceiling/section.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { jobBuilder, type ProfileWords } from '../support/job-builder.ts';

describe('bays of a line', () => {
    // lines 10 wide at 100 and 200 break it; one that passes over it at 150 does not; the one at 200 ends at its left side, its bottom runs on
    const line = {
        faces: [0, 300], leans: [0, 0],
        passes: [
            { of: '1', at: 100, low: 95, high: 105, relation: 'flush', stem: null, cuts: true }, { of: '2', at: 150, low: 145, high: 155, relation: 'over', stem: null, cuts: false },
            { of: '3', at: 200, low: 195, high: 205, relation: 'flush', stem: 'left', cuts: false },
        ],
    } as unknown as Line;
    test('lie between what breaks it, from face to face', () => {
        expect(baysOf(line).map(({ number, start, end }) => [number, start, end])).toEqual([[1, 0, 95], [2, 105, 195], [3, 205, 300]]);
    });
    test('what begins at the center of a crossing, as at a splice, begins in the bay behind it', () => {
        expect([0, 99, 100, 160, 199, 200].map(place => bayAt(line, place))).toEqual([1, 1, 2, 2, 2, 3]);
    });
    test('a side is broken by what ends at it, the other side and the bottom are not', () => {
        expect([bayStarts(line, 'left'), bayStarts(line, 'right'), bayStarts(line, 'bottom')]).toEqual([[1, 2, 3], [1, 2], [1, 2]]);
    });
});

describe('what stops a bottom as it goes up', () => {
    const b = jobBuilder(), six = b.stock('six', { thickness: '3/4"', width: '5 1/2"' }), eight = b.stock('eight', { thickness: '3/4"', width: '7 1/4"' });
    const rabbet: [string, string] = ['1/4"', '1/2"'];
    const section = (words: ProfileWords): WholeSection => sectionOf(b.profile('beam', {
        blocking: { stock: six }, spacers: { stock: six, height: '5"' }, sides: { stock: eight }, bottom: { stock: six }, cleats: null, ...words,
    }), b.said(b.measure('1/4"'))) as WholeSection;
    const above = (words: ProfileWords): string => { const one = section(words); return printInches(one.depth.ticks - seatOf(one)); };

    // sides of 7 1/4" held down 1/4" end 7 1/2" below the ceiling
    test('cleats, the shoulders of the rabbets, or nothing: then it is flush with the sides', () => {
        expect(above({})).toBe('3/4"');
        expect(above({ sides: { stock: eight, rabbet }, bottom: { stock: six, place: 'in-rabbets' } })).toBe('1/2"');
        // a rabbet of which nothing is said that the bottom lies in it stops nothing: it is a groove that shows
        expect(above({ sides: { stock: eight, rabbet } })).toBe('3/4"');
    });
    test('the edges of the sides that it lies under, which end at its top', () => {
        const one = section({ bottom: { stock: six, place: 'under-sides', overhang: '1/4"' } });
        expect([seatOf(one), sideFootOf(one)].map(printInches)).toEqual(['7 1/2"', '7 1/2"']);
        expect([printInches(one.depth.ticks), playOf(one)]).toEqual(['8 1/4"', 0]);
    });
});
