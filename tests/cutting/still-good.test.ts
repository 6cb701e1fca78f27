import { describe, expect, test } from 'vitest';
import { rabbetOff, wrongFor } from '../../src/cutting/at-bench.ts';
import { areaOf, canBecome, gainOfCut, offcutsOf, restOf } from '../../src/cutting/become.ts';
import type { MeasuredBoard } from '../../src/job/model.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import type { Work } from '../../src/takeoff/work.ts';
import { given, job, piece, stock } from './samples.ts';

/** What a piece that is cut is still good for, and a board that was measured; by hand. Boards of 5 1/2" by 3/4". */
const pine = stock(), oak = stock({ name: 'oak' });
const rabbet = (width = '1/4', height = '1/4'): Work => ({ kind: 'rabbet', width: inches(width), height: inches(height), edge: 'lower', face: 'back' });
const ease: Work = { kind: 'ease', by: inches('1/16') }, slots: Work = { kind: 'slots', count: 2, size: '#10', places: 1, where: 'in the west end' };
const made = (length: string, over: Partial<Piece> = {}): Piece => piece('sample.a', pine, inches(length), over);
const miters = (first: number, last: number): Partial<Piece> => ({ part: 'side', on: 'south', ends: [first, last].map(degrees => (degrees === 0 ? { cut: 'square' } : { cut: 'miter', degrees })) as unknown as Piece['ends'] });

describe('a piece that is cut becomes another one', () => {
    test.each<[string, Piece, Piece, ReturnType<typeof canBecome>]>([
        ['as it is', made('40'), made('40'), 'keep'], ['cut shorter', made('40 1/32'), made('40'), 'trim'], ['not longer', made('39 31/32'), made('40'), undefined],
        ['ripped narrower', made('40'), made('40', { width: inches(5) }), 'rip'], ['ripped and cut shorter', made('41'), made('40', { width: inches(5) }), 'rip'],
        ['not wider', made('40', { width: inches(5) }), made('40'), undefined], ['not as thick', made('40'), made('40', { thickness: inches('1/2') }), undefined],
        ['with what is left for scribing', made('40', { width: inches(5), scribe: inches('1/2') }), made('40'), 'keep'],
        ['not for what is to be scribed more', made('40'), made('40', { scribe: inches('1/4') }), undefined],
        ['with the groove that is wanted', made('40', { work: [rabbet()] }), made('40', { work: [rabbet()] }), 'keep'], ['not with another one', made('40', { work: [rabbet()] }), made('40', { work: [rabbet('3/8')] }), undefined],
        ['not with one that is not wanted', made('40', { work: [rabbet()] }), made('40'), undefined], ['one that is wanted can still be cut', made('40'), made('40', { work: [rabbet()] }), 'keep'],
        ['eased edges stay eased', made('40', { work: [ease] }), made('40'), undefined], ['an end with slots is cut off', made('41', { work: [slots] }), made('40'), 'trim'],
        ['nobody rips off an edge that has a groove', made('40', { work: [rabbet()] }), made('40', { width: inches(5), work: [rabbet()] }), undefined],
        ['with its miters', made('40', miters(45, 45)), made('40', miters(45, 45)), 'keep'],
        // two miters through 3/4" take 3/4" each off what is square
        ['square out of what is mitered, 1 1/2" longer', made('41 1/2', miters(45, 45)), made('40'), 'trim'], ['and not a hair less', made('41 15/32', miters(45, 45)), made('40'), undefined],
        // what lies is mitered through its width: twice 5 1/2"
        ['out of a bottom at 45 degrees', made('51', { ...miters(45, 45), part: 'bottom' }), made('40', { part: 'side' }), 'trim'],
        ['and not a hair less of it', made('50 31/32', { ...miters(45, 45), part: 'bottom' }), made('40', { part: 'side' }), undefined],
        ['mitered out of what is square and as long', made('40'), made('40', miters(45, 0)), 'trim'],
    ])('%s', (_, old, wanted, how) => {
        expect(canBecome(old, wanted)).toBe(how);
    });
    const offcuts = (share?: Rational) => offcutsOf(job({ shortestOffcut: given(inches(24)), ...share && { offcutWorth: given(share) } })), area = inches(40) * inches('5 1/2');
    test('most wood first: then what stays as it is, the same part, in its place', () => {
        const wanted = made('40');
        expect([areaOf(wanted), areaOf(made('40', { scribe: inches('1/2') }))]).toEqual([area, inches(40) * inches(6)]);
        const olds = [made('40'), { ...made('40'), id: 'sample.b' }, made('40', { part: 'cleat' }), made('41'), { ...made('41', { part: 'cleat' }), id: 'sample.b' }, made('39')];
        expect(olds.map(old => gainOfCut(old, wanted, offcuts()))).toEqual([8 * area + 7, 8 * area + 6, 8 * area + 5, 8 * area + 3, 8 * area, 0]);
    });
    test('less what it would be worth as an offcut, unless what is left is one', () => {
        // half of 41" by 5 1/2", of which 1" is left, is 112 3/4 square inches; of 80" half of 40" is lost; of 63 31/32", 23 31/32" are no offcut
        const saved = (length: string, share = new Rational(1, 2)): number => gainOfCut({ ...made(length, { part: 'cleat' }), id: 'sample.b' }, made('40'), offcuts(share));
        expect(saved('41')).toBe(8 * (area - inches(41) * inches('5 1/2') / 2));
        expect(saved('80')).toBe(8 * (area - inches(40) * inches('5 1/2') / 2));
        expect(saved('63 31/32')).toBe(8 * (area - inches('63 31/32') * inches('5 1/2') / 2));
        expect([restOf(made('64'), made('40'), offcuts()), restOf(made('63 31/32'), made('40'), offcuts())]).toEqual([inches(24), 0]);
        // worth as much as an offcut it is no gain, but as it is it can stay where it is; one that is no offcut is worth nothing as one
        expect([saved('40', new Rational(1)), saved('41', new Rational(1)), gainOfCut(made('40'), made('40'), offcuts(new Rational(1)))]).toEqual([4, 0, 7]);
        expect(gainOfCut(made('20'), made('20'), offcuts(new Rational(1)))).toBe(8 * inches(20) * inches('5 1/2') + 7);
    });
});

describe('a board that was measured', () => {
    const board = (sizes: Partial<MeasuredBoard> = {}): MeasuredBoard => ({ name: 'b1', at: pine.at, stock: given(pine), into: [], ...sizes });
    const size = (length: string) => given(inches(length));
    const wrong = (of: Piece, sizes: Partial<MeasuredBoard>, off?: [string, string], stockOf = pine) =>
        wrongFor(of, { board: board(sizes), stock: stockOf, rabbet: off && { off: off[0].startsWith('-') ? -inches(off[0].slice(1)) : inches(off[0]), takes: inches(off[1]) }, endTrim: inches(1) });
    const hidden: Partial<Piece> = { part: 'blocking' };
    test.each<[string, ReturnType<typeof wrong>, ReturnType<typeof wrong>]>([
        ['will do as it is', wrong(made('40'), {}), undefined],
        // 1/64" passes what is seen, 1/32" what is hidden
        ['a 64th narrower', wrong(made('40'), { width: size('5 31/64') }), undefined], ['more than that', wrong(made('40'), { width: size('5 61/128') }), 'too-narrow'],
        ['a 32nd narrower, hidden', wrong(made('40', hidden), { width: size('5 15/32') }), undefined], ['more than that, hidden', wrong(made('40', hidden), { width: size('5 59/128') }), 'too-narrow'],
        ['just as wide, ripped', wrong(made('40', { width: inches(5), ripped: true }), { width: size('5') }), undefined],
        ['a hair narrower, ripped', wrong(made('40', { width: inches(5), ripped: true }), { width: size('4 127/128') }), 'too-narrow'],
        ['what is to be scribed takes more', wrong(made('40', { width: inches(5), scribe: inches('1/2'), ripped: true }), { width: size('5 1/4') }), 'too-narrow'],
        ['a 64th thinner', wrong(made('40'), { thickness: size('47/64') }), undefined], ['more than that, thinner', wrong(made('40'), { thickness: size('93/128') }), 'too-thin'],
        ['more than that, thicker', wrong(made('40'), { thickness: size('99/128') }), 'too-thick'], ['a 32nd thicker, hidden', wrong(made('40', hidden), { thickness: size('25/32') }), undefined],
        ['a spacer of any thickness', wrong(made('40', { part: 'spacer' }), { thickness: size('1/2') }), undefined],
        ['of a stock whose thickness nobody knows', wrong(made('40'), { thickness: size('1/2') }, undefined, { ...pine, thickness: undefined }), undefined],
        ['just long enough with its end trim', wrong(made('40'), { length: size('41') }), undefined], ['a hair shorter', wrong(made('40'), { length: size('40 127/128') }), 'too-short'],
        ['a groove that is off, where one is wanted', wrong(made('40', { work: [rabbet()] }), {}, ['3/128', '1/4']), 'groove-off'],
        ['one that is too narrow', wrong(made('40', { work: [rabbet()] }), {}, ['-3/128', '1/4']), 'groove-off'], ['a 64th off', wrong(made('40', { work: [rabbet()] }), {}, ['1/64', '1/4']), undefined],
        ['ripped away, where none is wanted: as wide as is left', wrong(made('40', { width: inches('5 1/4'), ripped: true }), {}, ['1/16', '1/4']), undefined],
        ['and no wider', wrong(made('40', { width: inches('5 1/4'), ripped: true }), {}, ['1/16', '9/32']), 'too-narrow'],
    ])('%s', (_, is, wanted) => {
        expect(is).toBe(wanted);
    });
    test('its groove is held against the nearest one that pieces of its stock have', () => {
        const pieces = [made('40', { work: [rabbet('1/4', '3/8')] }), made('40', { work: [rabbet('1/2', '3/4')] }), made('40'), piece('sample.c', oak, inches(40), { work: [rabbet('5/16')] })];
        const off = (width: string, of = pieces) => rabbetOff(board({ rabbet: size(width) }), of);
        expect([off('5/16'), off('7/16'), off('3/8')]).toEqual([
            { off: inches('1/16'), takes: inches('3/8') }, { off: -inches('1/16'), takes: inches('3/4') }, { off: inches('1/8'), takes: inches('3/8') },
        ]);
        expect([off('1/4', [made('40')]), rabbetOff(board(), pieces)]).toEqual([undefined, undefined]);
    });
});
