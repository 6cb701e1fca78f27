import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { inches } from '../../src/quantity/rational.ts';
import { TICKS_PER_MM } from '../../src/quantity/ticks.ts';
import { consumablesOf } from '../../src/takeoff/consumables.ts';
import { inRow } from '../../src/takeoff/in-row.ts';
import type { Consumable, EndCut, Joint, Piece } from '../../src/takeoff/model.ts';
import type { Setting } from '../../src/takeoff/setting.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { wetGoods } from '../../src/takeoff/wet-goods.ts';
import { piece, stock } from '../cutting/samples.ts';
import { exampleRoom } from '../support/example-room.ts';

const MITER: EndCut = { cut: 'miter', degrees: 45 }, SQUARE: EndCut = { cut: 'square' };
const show = (as: 'feet-inches' | 'millimeters'): Setting => ({ ceiling: { room: { job: { show: { value: as } } }, around: {} }, size: String }) as unknown as Setting;
const metric = show('millimeters'), us = show('feet-inches');
const mm = (length: number): number => length * TICKS_PER_MM;
const pine = stock();
const countOf = (goods: readonly Consumable[], kind: Consumable['kind']): string | undefined => {
    const one = goods.find(each => each.kind === kind);
    return one && `${one.count} ${one.unit}`;
};

describe('glue, filler, caulk', () => {
    const end = (id: string, ends: [EndCut, EndCut]): Piece => piece(id, pine, mm(1000), { part: 'side', width: mm(100), thickness: mm(20), ends });
    const joints = (kind: Joint['kind'], id: string, count: number): Joint[] => Array.from({ length: count }, () => ({ kind, at: '', pieces: [id, id], biscuits: null }));
    const glue = (ends: [EndCut, EndCut], kind: Joint['kind'] = 'corner'): string | undefined => countOf(wetGoods([end('a', ends)], joints(kind, 'a', 500), metric, 0), 'glue');

    // 500 ends of 100 mm x 20 mm are 1 square meter: 160 mL. A miter of 45 degrees is 1.414 times as long through the thickness: 226.3 mL
    test('a miter has more to glue than a square end, by the slant', () => {
        expect([glue([SQUARE, SQUARE]), glue([SQUARE, MITER]), glue([MITER, MITER])]).toEqual(['160 mL', '230 mL', '230 mL']);
    });
    test('corners and splices of the band are nailed to the wall and not glued', () => {
        expect([glue([MITER, MITER], 'band-corner'), glue([SQUARE, SQUARE], 'band-splice')]).toEqual([undefined, undefined]);
    });
    // 10 cleats of 1 m x 19 mm: 0.19 square meters, 30.4 mL; 2.05 square feet at 1/2 fl oz: 1.02
    test('cleats are glued along their whole length, at the usual spread in either measure, rounded up to what is bought', () => {
        const cleats = Array.from({ length: 10 }, (_, i) => piece(`c${i}`, pine, mm(1000), { part: 'cleat', width: mm(19) }));
        expect([countOf(wetGoods(cleats, [], metric, 0), 'glue'), countOf(wetGoods(cleats, [], us, 0), 'glue')]).toEqual(['40 mL', '2 fl oz']);
    });
    // 30 mL, or a fluid ounce, for 100 holes
    test('filler by the holes', () => {
        expect([101, 100, 0].map(holes => countOf(wetGoods([], [], metric, holes), 'filler'))).toEqual(['40 mL', '30 mL', undefined]);
        expect(countOf(wetGoods([], [], us, 101), 'filler')).toBe('2 fl oz');
    });
    // 300 mL over pi/4 x 5 mm x 5 mm are 15.279 m of bead; both edges of 7.639 m of trim are one tube just so
    test('caulk along both edges of trim and band, and of nothing else', () => {
        const caulk = (part: Piece['part'], length: number): string | undefined => countOf(wetGoods([piece('t', pine, mm(length), { part })], [], metric, 0), 'caulk');
        expect([caulk('trim', 7639), caulk('trim', 7640), caulk('band', 7640), caulk('side', 7640)]).toEqual(['1 tubes', '2 tubes', '2 tubes', undefined]);
    });
    // the same tube run out 3/16" (4.7625 mm) across makes 16.841 m: both edges of 8.420 m of trim, where a bead of 5 mm wants a second
    test('the bead is the round figure of the tape that the job is measured with', () => {
        const caulk = (setting: Setting, length: number): Consumable => wetGoods([piece('t', pine, mm(length), { part: 'trim' })], [], setting, 0).find(({ kind }) => kind === 'caulk')!;
        expect([us, metric].map(setting => [8420, 8421].map(length => caulk(setting, length).count))).toEqual([[1, 2], [2, 2]]);
        expect([caulk(us, 8420).by, caulk(metric, 8420).by]).toEqual([expect.stringMatching(/10\.1 fl oz makes 55 ft of a round bead 3\/16" across$/), expect.stringMatching(/300 mL makes 15 m of a round bead 5 mm across$/)]);
    });
});

describe('fasteners', () => {
    const room = layOut(exampleRoom()).ceiling!, { pieces, joints } = takeOff(room);

    test('a row has one at each end, and none is farther from the next than is said', () => {
        expect([[48, 16], [48.1, 16], [10, 16], [0, 16], [48, 0]].map(([length, every]) => inRow(length!, every!))).toEqual([4, 5, 2, 1, 0]);
    });
    test('biscuits are told by where they go: two butts at each crossing of the through lines', () => {
        const biscuits = (kinds: readonly Joint['kind'][]): string | undefined => consumablesOf([piece('', pine, 1, { part: 'spacer' })], kinds.map(kind => ({ kind, at: '', pieces: ['', ''], biscuits: { count: 2, size: '#10' } })), us)[0]?.by;
        expect(biscuits(['butt', 'splice', 'butt', 'butt'])).toBe('as the profile says, in 3 butt joints and 1 splice of bottoms');
        // three lines that run through, and two that are cut between them, on both sides
        expect(joints.filter(({ kind, biscuits: put }) => kind === 'butt' && put)).toHaveLength(3 * 2 * 2);
    });
    test('nails are told what they go into: cleats where there are any, else what the bottom lies against', () => {
        const into = (words: Parameters<typeof exampleRoom>[1]): string[] => takeOff(layOut(exampleRoom({}, words)).ceiling!).consumables
            .filter(({ kind, what }) => kind === 'nails' && /sides|bottoms/.test(what)).map(({ by }) => by.replace(/, at most .* apart with/, ' with'));
        const nails = { gauge: 18, length: '1 1/2"', every: '12"' }, sides = exampleRoom().grid!.beams!.value.sides!.stock!.value;
        expect(into({})).toEqual(['a row into the blocking with one at each end; 2 into every spacer', '2 rows into the cleats with one at each end']);
        expect(into({ spacers: null, cleats: null })).toEqual(['a row into the blocking with one at each end', '2 rows along its edges with one at each end']);
        expect(into({ cleats: null, bottom: { stock: sides, place: 'under-sides', nails } })[1]).toBe('2 rows into the edges of the sides with one at each end');
        expect(into({ cleats: null, sides: { stock: sides, rabbet: ['1/4"', '3/4"'], nails }, bottom: { stock: sides, rip: '5 15/16"', place: 'in-rabbets', nails } })[1]).toBe('2 rows into the rabbets of the sides with one at each end');
    });
    test('nail holes in cleats are hidden, and not filled', () => {
        const { consumables } = takeOff(room), nails = consumables.filter(({ kind }) => kind === 'nails');
        const seen = nails.filter(({ what }) => !what.includes('cleats')).reduce((sum, { count }) => sum + count, 0);
        expect(nails.some(({ what }) => what.includes('cleats'))).toBe(true);
        expect(consumables.find(({ kind }) => kind === 'filler')!.by).toContain(`${seen} holes`);
    });
    // for stock of 3/4", or within a millimeter of it; for other thicknesses no length is said. Common practice, no source
    test('pocket screws of 1 1/4" go with spacers of 3/4"', () => {
        const what = (thickness: string): string | undefined => consumablesOf([piece('s', pine, inches(5), { part: 'spacer', thickness: inches(thickness) })], [], { ...us, size: ticks => `${ticks / inches(1)}"` } as Setting)
            .find(({ kind }) => kind === 'screws')?.what;
        expect([what('3/4'), what('25/32'), what('1/2'), what('1')]).toEqual(['1.25" pocket screws, spacers', '1.25" pocket screws, spacers', 'pocket screws, spacers', 'pocket screws, spacers']);
        expect(pieces.some(({ part }) => part === 'spacer')).toBe(true);
    });
});
