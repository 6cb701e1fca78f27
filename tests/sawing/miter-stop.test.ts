import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { planBoards } from '../../src/cutting/first-plan.ts';
import type { JobSettings } from '../../src/job/model.ts';
import { inches } from '../../src/quantity/rational.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { stepWords } from '../../src/report/sawing/step-words.ts';
import { sawOrder } from '../../src/sawing/index.ts';
import type { SawOrder } from '../../src/sawing/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import type { EndCut, Piece } from '../../src/takeoff/model.ts';
import { given, job, piece, stock } from '../cutting/samples.ts';
import { runs } from '../support/full.ts';
import { randomRooms } from '../support/random-rooms.ts';
import { checkSawOrder } from './checker.ts';

const MITER: EndCut = { cut: 'miter', degrees: 45 }, OUTSIDE: EndCut = { cut: 'miter', degrees: -45 }, SQUARE: EndCut = { cut: 'square' };
const STOP = job({ miterStop: given(inches(96)) });
const fir = stock({ name: 'fir-1x8', width: inches('7 1/4'), feet: [16] });
const GROOVE: Piece['work'] = [{ kind: 'rabbet', width: inches('1/4'), height: inches('1/4'), edge: 'lower', face: 'back' }];
const side = (id: string, length: string, ends: [EndCut, EndCut] = [MITER, MITER], work: Piece['work'] = []): Piece =>
    piece(id, fir, inches(length), { part: 'side', on: 'south', ends, work });
const inch = (ticks: number | undefined): string => (ticks === undefined ? '-' : printInches(ticks));

function orderOf(pieces: readonly Piece[], settings: JobSettings = STOP): SawOrder {
    const plan = planBoards(pieces, settings), order = sawOrder(plan, settings);
    checkSawOrder(order, plan, settings);
    return order;
}
const once = ({ boards }: SawOrder): string[] => boards.flatMap(b => b.strips).flatMap(s => s.pieces).filter(p => p.once).map(p => p.piece.id).sort();

// A slot of 1/8" at 45 degrees is 0.1768" long: 1/8" and, up to the tape's thirty-seconds, 1/16". End trim 1", so 1/2" at the hooked end.
//   square 40" from 1/2" to 40 1/2"; the next begins at 40 5/8"
//   mitered 50" from 40 5/8", with its slot to 90 11/16", the next at 90 13/16"; mitered 30" from there to 120 7/8"
test('what is mitered alike at both ends lies behind what is cut square, and is cut once', () => {
    const order = orderOf([side('b', '30'), side('a', '50'), piece('c', fir, inches(40))]);
    expect(order.boards[0]!.strips[0]!.pieces.map(p => [p.piece.id, inch(p.from), inch(p.to)])).toEqual([
        ['c', '1/2"', '40 1/2"'], ['a', '40 5/8"', '90 11/16"'], ['b', '90 13/16"', '120 7/8"'],
    ]);
    expect(order.steps.map(step => (step.do === 'crosscut' ? inch(step.stop) : step.do))).toEqual(['40"', 'blocks', 'miter']);
    expect(order.steps.flatMap(step => (step.do === 'miter' ? step.cuts.map(cut => [inch(cut.stop), cut.end, cut.hand, cut.takes?.length]) : []))).toEqual([
        ['50"', 'right', 'both ends', 1], ['30"', 'right', 'both ends', 1],
    ]);
    expect(stepWords(order.steps.at(-1)!, order, ({ id }) => id)).toEqual({
        set: 'saw at 45°, 4 cuts; the test pair first',
        lines: [
            'stop at 4\' 2" (50") to the long point, 1 straight from the board, both ends: fir-1x8 #1: a',
            'stop at 2\' 6" (30") to the long point, 1 straight from the board, both ends: fir-1x8 #1: b',
        ],
    });
    expect(order.cautions.filter(({ at, words }) => at === 'miter' && words.includes('between a stop and a tilted'))).toHaveLength(1);
});

test('a square blank less for each is a stop less for each length', () => {
    const pieces = ['60', '50', '30'].map((length, i) => side(String(i), length));
    const [without, withStop] = [job(), STOP].map(settings => orderOf(pieces, settings).setUps);
    expect(without).toMatchObject({ stops: 3, angles: 1, miterStops: 3, total: 7 });
    expect(withStop).toMatchObject({ stops: 0, angles: 1, miterStops: 3, total: 4 });
});

describe('what is cut square first all the same', () => {
    test.each<[string, Piece, string[]]>([
        ['one that no stop reaches', side('s', '97'), []],
        ['one that it just reaches', side('s', '96'), ['s']],
        ['one square end', side('s', '40', [MITER, SQUARE]), []],
        ['two angles', side('s', '40', [MITER, { cut: 'miter', degrees: 30 }]), []],
        ['long points on either side', side('s', '40', [MITER, OUTSIDE]), []],
        ['long points on the face', side('s', '40', [OUTSIDE, OUTSIDE]), ['s']],
        ['a crown', side('s', '40', [{ ...MITER, flat: { miter: 31.6, bevel: 33.9 } }, { ...MITER, flat: { miter: 31.6, bevel: 33.9 } }]), []],
        ['what is ripped by itself', { ...side('s', '40', [MITER, MITER], [{ kind: 'rip', width: inches(7) }]), width: inches(7), ripped: true }, []],
    ])('%s', (_, one, wanted) => expect(once(orderOf([one]))).toEqual(wanted));

    test('what is parted in two, whose blank is longer by that cut', () => {
        const halved = side('s', '40', [MITER, MITER], [{ kind: 'halve', relieved: 0 }]);
        expect(once(sawOrder(planBoards([halved], STOP), STOP))).toEqual([]);
    });

    test('without a stop nothing is cut once, and blanks are longer by no more than before', () => {
        expect(once(orderOf([side('s', '40')], job()))).toEqual([]);
        expect(orderOf([side('s', '40')], job()).boards[0]!.strips[0]!.pieces.map(p => inch(p.to - p.from))).toEqual(['40 1/32"']);
    });

    test('pieces of one board whose edges are machined differently', () => {
        expect(once(orderOf([side('a', '50', [MITER, MITER], GROOVE), side('b', '30')]))).toEqual([]);
        const alike = orderOf([side('a', '50', [MITER, MITER], GROOVE), side('b', '30', [MITER, MITER], GROOVE), piece('c', fir, inches(40))]);
        expect(once(alike)).toEqual(['a', 'b']);
        expect(alike.steps.map(step => step.do)).toEqual(['crosscut', 'blocks', 'rabbet', 'miter']);
        const rabbet = alike.steps.find(step => step.do === 'rabbet')!;
        expect([rabbet.whole.length, rabbet.uncut.map(({ name }) => name)]).toEqual([0, ['fir-1x8 #1']]);
        expect(stepWords(rabbet, alike).lines.at(-1)).toBe('what is left of these is run in one, before its pieces are cut from it: fir-1x8 #1');
    });
});

test('of strips too, once these are ripped', () => {
    const pine = stock({ feet: [8] });
    const cleat = (id: string): Piece => piece(id, pine, inches(40), {
        part: 'side', on: 'south', width: inches('2 1/2'), ripped: true, ends: [MITER, MITER], work: [{ kind: 'rip', width: inches('2 1/2') }],
    });
    const order = orderOf([cleat('a'), cleat('b'), cleat('c'), cleat('d')]);
    expect(once(order)).toEqual(['a', 'b', 'c', 'd']);
    expect(order.steps.map(step => step.do)).toEqual(['rip', 'blocks', 'miter']);
});

test('a board is told as run in one where any of its strips is still to be cut', () => {
    const pine = stock({ feet: [8] }), rip: Piece['work'] = [{ kind: 'rip', width: inches('2 1/2') }];
    const one = (id: string, work: Piece['work'] = []): Piece => piece(id, pine, inches(90), {
        part: 'side', on: 'south', width: inches('2 1/2'), ripped: true, ends: [MITER, MITER], work: [...rip, ...work],
    });
    const order = orderOf([one('grooved', GROOVE), one('plain')]), rabbet = order.steps.find(step => step.do === 'rabbet')!;
    expect([once(order), order.boards.map(({ strips }) => strips.length), rabbet.uncut.map(({ name }) => name)]).toEqual([['grooved', 'plain'], [2], ['pine-1x6 #1']]);
});

test('any room: every piece comes off its board once, where it lies', () => {
    fc.assert(fc.property(randomRooms, fc.integer({ min: 12, max: 120 }), ({ room }, longest) => {
        const settings: JobSettings = { ...room.job, miterStop: given(inches(longest)) };
        const ceiling = layOut(room).ceiling;
        if (!ceiling) return;
        orderOf(takeOff(ceiling).pieces, settings);
    }), { seed: 11, numRuns: runs(60) });
});
