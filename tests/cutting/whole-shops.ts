import type { Shop } from '../../src/cutting/shop.ts';
import type { CutBoard, CutName, JobSettings, MeasuredBoard, Room, Stock } from '../../src/job/model.ts';
import { inches, millimeters, Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT } from '../../src/quantity/ticks.ts';
import { sawOrder } from '../../src/sawing/index.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { drawer } from '../support/drawer.ts';
import { jobBuilder } from '../support/job-builder.ts';
import { given, job, nowhere, piece, stock } from './samples.ts';

/** What is to be cut, of what; and what rooms say that is cut already. */
interface WholeShop {
    readonly name: string;
    readonly pieces: readonly Piece[]; readonly settings: JobSettings;
    readonly shop?: Shop; readonly rooms?: readonly Room[];
}

const worth = (amount: number) => ({ amount: new Rational(amount), currency: 'USD' });
const offcut = (count: number, length: string, money?: number, width?: string) =>
    given({ count, length: inches(length), ...money !== undefined && { worth: worth(money) }, ...width !== undefined && { width: inches(width) } });

/** Pieces of a room: mitered sides, bottoms, cleats ripped both ways, blocking ripped narrower, in lengths drawn by chance. */
function pieces(of: Stock, seed: number, count: number, room = 'sample'): Piece[] {
    const draw = drawer(seed), thick = of.thickness!.value.ticks;
    return Array.from({ length: count }, (_, i) => {
        const length = inches(`${14 + draw(80)} ${1 + draw(31)}/32`), id = `${room}.p${String(i).padStart(2, '0')}`;
        switch (draw(4)) {
            case 0: return piece(id, of, length, { room, part: 'side', on: 'south', ends: [{ cut: 'miter', degrees: 45 }, { cut: 'miter', degrees: 22.5 }] });
            case 1: return piece(id, of, length, { room, part: 'cleat', width: thick, thickness: thick, ripped: true });
            case 2: return piece(id, of, length, { room, part: 'blocking', width: inches('2 1/4'), ripped: true });
            default: return piece(id, of, length, { room });
        }
    });
}

const pine = stock({ feet: [8, 10, 16], each: { 8: '11', 10: '14.25', 16: '23.5' } }), ash = stock({ name: 'ash-1x8', width: inches('7 1/4'), feet: [10, 12], perFoot: '3.1' });
const rack: Stock = { ...pine, name: 'rack-1x6', key: 'sample#rack', onHand: [offcut(2, '61 1/2', 4), offcut(1, '100'), offcut(3, '26'), offcut(1, '144', 40)] };
/** Boards and strips, some of them worth something. */
const strips: Stock = { ...pine, name: 'strips', key: 'sample#strips', onHand: [offcut(2, '96', undefined, '2 1/4'), offcut(1, '60', 1, '3'), offcut(1, '120')] };
const oneInTen: Stock = { ...ash, name: 'knotty', key: 'sample#knotty', defects: given(new Rational(1, 10)), spare: given(1) };
const sheet = (name: string, grain: 'none' | 'lengthwise', stages: 2 | 3): Stock => ({
    ...stock({ name, width: inches(48), thickness: inches('1/4'), feet: [8], each: { 8: '58' } }), sheet: given({ width: inches(48), length: inches(96), grain, stages }),
});
const panels = (of: Stock, ...sizes: readonly (readonly [long: number, wide: number])[]): Piece[] =>
    sizes.map(([long, wide], i) => piece(`sample.${of.name}-${i}`, of, inches(long), { part: 'panel', width: inches(wide), ripped: true }));
const metric = stock({ name: 'b140', width: millimeters(140), thickness: millimeters(19), feet: [] });
const metricLengths: Stock = { ...metric, lengths: [given(millimeters(3000)), given(millimeters(4800))], prices: [{ perTick: new Rational('0.0042').div(millimeters(1)), currency: 'EUR', at: nowhere }] };

const setUps: Shop = { apart: new Set(), setUps: { each: worth(3), count: plan => sawOrder(plan, job()).setUps.total } };

const there: Stock = { ...pine, name: 'there', key: 'sample#there', onHand: [offcut(2, '120'), offcut(1, '72', 5)] };
const inDen = (name: string, length: number, over: Partial<Piece> = {}): Piece => piece(`den.${name}`, there, inches(length), { room: 'den', ...over });
const MITERED = [{ cut: 'miter', degrees: 45 }, { cut: 'miter', degrees: 45 }] as const, RABBET = { kind: 'rabbet', width: inches('1/4'), height: inches('1/4'), edge: 'lower', face: 'back' } as const;
const denPieces = [
    inDen('bottom-1', 60), inDen('bottom-2', 48), inDen('bottom-3', 48), inDen('bottom-4', 90), inDen('side-1', 40, { part: 'side', on: 'south', ends: MITERED, work: [RABBET] }),
    inDen('side-2', 40, { part: 'side', on: 'south', ends: MITERED, work: [RABBET] }), ...['1', '2', '3'].map(nth => inDen(`cleat-${nth}`, 36, { part: 'cleat', width: inches('3/4'), thickness: inches('3/4'), ripped: true })),
];
const cut = (length: number, into: readonly CutName[], left?: number): CutBoard =>
    ({ at: nowhere, length: given(inches(length)), stock: given(there), into, ...left !== undefined && { left: [given(inches(left))] } });
const asCut = (name: string, length: number, miters: readonly number[] = [], hand: 'left' | 'right' | null = null): CutName => ({ ...given(name), asCut: { length: inches(length), miters, hand } });
const measured = (name: string, sizes: Partial<MeasuredBoard>): MeasuredBoard => ({ name, at: nowhere, stock: given(there), into: [], ...sizes });
/** Cut as wanted, cut too long, mitered otherwise, in sections; a piece that the list has no more; boards that were measured. */
const den: Room = {
    ...jobBuilder().room('den', {}), name: 'den', job: job(), spoiled: [given('bottom-3')],
    cutBoards: [
        cut(120, [asCut('bottom-1', 60), asCut('bottom-2', 49)]), cut(192, [given('bottom-3'), asCut('side-1', 40, [-45, 45], null), asCut('gone', 20)], 60),
        cut(96, [given('cleat-1'), given('cleat-2')]), cut(72, [given('cleat-3')], 30),
    ],
    measuredBoards: [measured('b1', { length: given(inches(119)), width: given(inches('5 3/8')) }), measured('b2', { length: given(inches(70)), thickness: given(inches('11/16')) })],
};

export const SHOPS: readonly WholeShop[] = [
    { name: 'two-stocks', pieces: [...pieces(pine, 1, 26), ...pieces(ash, 2, 17)], settings: job() },
    { name: 'on-hand', pieces: pieces(rack, 3, 22), settings: job({ kerf: given(inches('3/32')), endTrim: given(inches('1 1/4')), offcutWorth: given(new Rational(1, 2)) }) },
    { name: 'little-cleats', pieces: pieces(pine, 4, 40).filter(({ part }) => part === 'cleat' || part === 'blocking'), settings: job({ shortestOffcut: given(inches(12)) }) },
    {
        name: 'too-long', pieces: [...pieces(ash, 5, 6), piece('sample.long', ash, 13 * TICKS_PER_FOOT), piece('sample.wide', ash, inches(20), { width: inches(9) })],
        settings: job({ longestBoard: given(11 * TICKS_PER_FOOT) }),
    },
    { name: 'rooms-apart', pieces: ['den', 'hall', 'attic'].flatMap((room, i) => pieces(rack, 6 + i, 7, room)), settings: job(), shop: { apart: new Set(['den', 'attic']) } },
    { name: 'set-ups', pieces: [...pieces(pine, 9, 12), ...pieces(ash, 10, 5)], settings: job(), shop: setUps },
    { name: 'strips-on-hand', pieces: [...pieces(strips, 11, 14), ...pieces(oneInTen, 12, 9)], settings: job() },
    {
        name: 'sheets', settings: job(), pieces: [
            ...panels(sheet('fiberboard', 'none', 3), [46, 30], [46, 30], [46, 30], [47, 20]), ...panels(sheet('veneered', 'lengthwise', 3), [60, 22], [60, 22], [30, 46], [20, 10]),
            ...panels(sheet('in-two', 'none', 2), [40, 22], [40, 22], [90, 20]), ...panels(sheet('along-in-two', 'lengthwise', 2), [60, 11], [60, 11], [30, 11]),
        ],
    },
    {
        name: 'millimeters', pieces: pieces(metricLengths, 13, 14), settings: job({
            currency: given('EUR'), show: given('millimeters'), cutTo: given(millimeters('0.5')), kerf: given(millimeters(3)), endTrim: given(millimeters(25)),
            shortestOffcut: given(millimeters(600)), offcutWorth: given(new Rational(1, 4)), miterStop: given(millimeters(1500)),
        }),
    },
    { name: 'cut-and-measured', pieces: denPieces, settings: job(), rooms: [den] },
];
