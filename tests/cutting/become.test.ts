import { describe, expect, test } from 'vitest';
import { gainOfCut, offcutsOf, restOf } from '../../src/cutting/become.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { job, piece, stock } from './samples.ts';

const pine = stock(), long = (length: string, id = `den.blocking-${length}`): Piece => piece(id, pine, inches(length));
const nowhere = { uri: 'memory:job', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } };
const offcuts = (share: number) => offcutsOf(job({ shortestOffcut: { value: inches('24'), at: nowhere, said: true }, ...share > 0 && { offcutWorth: { value: new Rational(share), at: nowhere, said: true } } }));

describe('what a piece that is cut is worth as another one', () => {
    test('as much as of its wood is used, where an offcut is worth nothing', () => {
        const gains = ['48', '40', '21', '5'].map(length => gainOfCut(long('48'), long(length), offcuts(0)));
        expect(gains).toEqual([...gains].sort((a, b) => b - a));
        expect(gains.every(gain => gain > 0)).toBe(true);
        expect(gainOfCut(long('48'), long('49'), offcuts(0))).toBe(0);
    });

    test('what is left of it as an offcut counts, and what it would be worth as one itself is taken off', () => {
        // half of 44" is more than 21" and 23" that is too short to be kept; half of 48" is less than 20" and half of 28"
        expect(gainOfCut(long('44'), long('21'), offcuts(0.5))).toBe(0);
        expect(gainOfCut(long('48'), long('20'), offcuts(0.5))).toBeGreaterThan(0);
        expect([restOf(long('44'), long('21'), offcuts(0.5)), restOf(long('48'), long('20'), offcuts(0.5))]).toEqual([0, inches('28')]);
        // too short to be kept: whatever is made from it is more
        expect(gainOfCut(long('23'), long('5'), offcuts(0.9))).toBeGreaterThan(0);
    });

    test('one that fits as it is stays, even where an offcut is worth as much as a board', () => {
        expect(gainOfCut(long('48', 'den.blocking-1'), long('48', 'den.blocking-1'), offcuts(1))).toBeGreaterThan(0);
    });
});
