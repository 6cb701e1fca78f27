import { describe, expect, test } from 'vitest';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { estimateOf } from '../../src/estimate/estimate.ts';
import { laborOf, type PricedRoom } from '../../src/estimate/labor.ts';
import { suppliesOf } from '../../src/estimate/materials.ts';
import type { Rates } from '../../src/job/rates.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import type { Consumable, Joint, Piece } from '../../src/takeoff/model.ts';
import { piece, stock } from '../cutting/samples.ts';
import { jobBuilder } from '../support/job-builder.ts';
import { NO_RATES } from '../support/no-rates.ts';
import { dollars, given } from './random-rates.ts';

/** A room with one piece of a foot of every part and one joint of every kind, each timed by another figure; every sum is reckoned by hand. */
const { settings } = jobBuilder(), pine = stock(), foot = inches(12);
const at = (line: number) => ({ uri: 'file:///yard.coffer', range: { start: { line, character: 0 }, end: { line, character: 9 } } });
const box = { name: 'box', at: at(1) }, flat = { name: 'flat', at: at(2) };

const own = (part: Piece['part'], line: string | null): Piece => piece(part, pine, foot, { part, line });
const PIECES = [
    ...(['blocking', 'spacer', 'side', 'cleat', 'bottom', 'timber', 'molding'] as const).map(part => own(part, 'A')),
    ...(['panel', 'band', 'trim'] as const).map(part => own(part, null)),
];
const joint = (kind: Joint['kind'], of: Piece['part']): Joint => ({ kind, at: '', pieces: [of, 'another'], biscuits: null });
const JOINTS = [
    joint('corner', 'side'), joint('side-splice', 'side'), joint('butt', 'bottom'), joint('splice', 'bottom'), joint('band-splice', 'band'), joint('band-corner', 'band'),
    joint('trim-splice', 'trim'), joint('trim-corner', 'trim'),
];
/** Line A is a box; line 1 and the grid are flat. */
function roomOf(name: string, coffers = 2): PricedRoom {
    return {
        takeOff: { room: name, pieces: PIECES, joints: JOINTS, consumables: [], leftOut: [] },
        ceiling: {
            lines: [{ name: 'A', section: { profile: box } }, { name: '1', section: { profile: flat } }], beams: { profile: flat }, around: {},
            crossings: [{ name: 'A1', ns: { name: '1' } }], coffers: Array.from({ length: coffers }, (_, i) => ({ number: i + 1 })), room: { job: settings() },
        } as unknown as PricedRoom['ceiling'],
    };
}
/** Minutes a foot, or for one. */
const aFoot = (minutes: number) => given(new Rational(minutes).div(foot)), each = (minutes: number) => given(new Rational(minutes));
const LABOR: Rates['labor'] = {
    ...NO_RATES.labor, at: at(3),
    byLength: { blocking: aFoot(1), side: aFoot(2), cleat: aFoot(3), bottom: aFoot(4), timber: aFoot(5), molding: aFoot(6), band: aFoot(7), trim: aFoot(8) },
    byCount: { layout: each(10), panel: each(11), spacer: each(12), corner: each(13), butt: each(14), splice: each(15), coffer: each(16), 'set-up': each(17) },
};
const told = (labor: Rates['labor'], rooms = [roomOf('den')], seen?: Set<string>): [string, string, number][] =>
    laborOf(rooms, 3, labor, seen).lines.map(({ phase, what, minutes }) => [phase, what, minutes.valueOf()]);

test('every part, joint, crossing and coffer takes its own time, in the order of the work', () => {
    expect(told(LABOR)).toEqual([
        ['setting out', 'crossings', 10], ['blocking', 'panels', 11], ['blocking', 'blocking', 1], ['blocking', 'spacers', 12], ['sides', 'sides', 2], ['sides', 'cleats', 3],
        ['bottoms', 'bottoms', 4], ['bottoms', 'timbers', 5], ['bottoms', 'moldings', 6], ['band', 'band', 7], ['trim', 'trim', 8], ['sides', 'corners of sides', 13],
        ['sides', 'splices of sides', 15], ['bottoms', 'butt joints of bottoms', 14], ['bottoms', 'splices of bottoms', 15], ['band', 'splices of the band', 15],
        ['trim', 'splices of the trim', 15], ['filling and sanding', 'coffers', 32], ['saw set-ups', 'fences and stops set', 51],
    ]);
});
test('of what nobody has timed it is told how much there is', () => {
    expect(laborOf([roomOf('den')], 3, { ...NO_RATES.labor, at: at(3) }).missing.map(({ rate, of, room }) => [rate, of, room])).toEqual([
        ['labor.layout', '1 crossing', 'den'], ['labor.panels', '1 panel', 'den'], ['labor.blocking', '1\' of blocking', 'den'], ['labor.spacers', '1 spacer', 'den'],
        ['labor.sides', '1\' of sides', 'den'], ['labor.cleats', '1\' of cleats', 'den'], ['labor.bottom', '1\' of bottoms', 'den'], ['labor.timber', '1\' of timbers', 'den'],
        ['labor.molding', '1\' of moldings', 'den'], ['labor.band', '1\' of band', 'den'], ['labor.trim', '1\' of trim', 'den'], ['labor.corner', '1 corner of sides', 'den'],
        ['labor.splice', '1 splice of sides', 'den'], ['labor.butt', '1 butt joint of bottoms', 'den'], ['labor.splice', '1 splice of bottoms', 'den'],
        ['labor.splice', '1 splice of the band', 'den'], ['labor.splice', '1 splice of the trim', 'den'], ['labor.coffer', '2 coffers', 'den'], ['labor.set-up', '3 fences and stops set', undefined],
    ]);
});

describe('a detail takes longer by shares of its own work', () => {
    // box: blocking 1, spacer 12, side 2, cleat 3, bottom 4, timber 5, molding 6, corner 13, splice 15, butt 14, splice 15: 90 minutes;
    // flat, the grid's and line 1's: crossing 10, panel 11, trim 8, its splice 15, two coffers 32: 76. The band is of no detail
    const first = { ...LABOR, firstBay: given(new Rational(1, 2)) };
    const slower = (labor: Rates['labor'], rooms?: PricedRoom[], seen?: Set<string>) => told(labor, rooms, seen).flatMap(([phase, what, minutes]) => (phase === 'first of its kind' ? [[what, minutes]] : []));
    test('its first bay by half of what a coffer takes, once for all rooms', () => {
        expect(slower(first, [roomOf('den'), roomOf('hall')])).toEqual([['first bay of box', 22.5], ['first bay of flat', 19]]);
        const seen = new Set<string>();
        expect([slower(LABOR, undefined, seen), slower(first, undefined, seen), slower(first, undefined, seen)]).toEqual([[], [['first bay of box', 22.5], ['first bay of flat', 19]], []]);
    });
    test('a room without coffers has no bay', () => expect(slower(first, [roomOf('den', 0)])).toEqual([]));
    test('one that is new to the crew by a tenth, one that is said or all', () => {
        const unfamiliar = (of: readonly { readonly at: ReturnType<typeof at> }[]) => ({ ...LABOR, unfamiliar: given({ share: new Rational(1, 10), of }) }) as unknown as Rates['labor'];
        expect(slower(unfamiliar([box]))).toEqual([['box is new to the crew', 9]]);
        expect(slower(unfamiliar([]))).toEqual([['box is new to the crew', 9], ['flat is new to the crew', 7.6]]);
    });
});

describe('what is priced in another money', () => {
    const bidOf = (bid: Partial<Rates['bid']>, labor: Partial<Rates['labor']> = {}) =>
        estimateOf({ parts: [{ rates: { labor: { ...NO_RATES.labor, ...labor }, bid: { ...NO_RATES.bid, ...bid } }, rooms: [roomOf('den')] }], plan: planBoards([], settings()), setUps: 0 }, { ...settings(), currency: given('USD') });
    const of = ({ missing }: ReturnType<typeof bidOf>): string[] => missing.filter(({ rate }) => rate === 'currency').map(each => each.of);
    test.each<[string, Partial<Rates['bid']>]>([
        ['a delivery', { delivery: dollars(80, 'EUR') }], ['an allowance', { allowances: [dollars(80, 'EUR')] }], ['a minimum', { minimum: dollars(80, 'EUR') }],
    ])('%s is in no sum, and told once', (_, bid) => {
        const estimate = bidOf(bid);
        expect([estimate.sums.total.valueOf(), estimate.additions, of(estimate)]).toEqual([0, [], ['what is priced in EUR: the job is in USD']]);
    });
    test('an hour is not paid in it', () => {
        const estimate = bidOf({}, { ...LABOR, rate: dollars(60, 'EUR') });
        expect([estimate.sums.labor.valueOf(), of(estimate)]).toEqual([0, ['what is priced in EUR: the job is in USD']]);
        expect(bidOf({}, { ...LABOR, rate: dollars(60) }).sums.labor.valueOf()).toBe(188);
    });
    test('where there is no labor block nothing is said of where it could stand', () => {
        const { missing } = bidOf({ profit: given({ share: new Rational(1, 10), of: 'cost' }) });
        expect(missing.filter(({ rate }) => rate === 'labor')).toStrictEqual([{ rate: 'labor', of: 'all work: there is no labor block in this folder or above it' }]);
    });
    test('overhead says whether contingency is in it', () => {
        const overhead = (bid: Partial<Rates['bid']>) => bidOf({ allowances: [dollars(100)], overhead: given(new Rational(1, 10)), ...bid }).additions.find(({ kind }) => kind === 'overhead')!.share!.ofWhat;
        expect([overhead({}), overhead({ contingency: given(new Rational(1, 20)) })]).toEqual(['what it costs', 'what it costs, contingency included']);
    });
});

test('supplies of one name are one line where their unit is one, by the price of each kind', () => {
    const glue = (count: number, unit: string): Consumable => ({ kind: 'glue', what: 'wood glue', count, unit, by: '', basis: '' });
    const { lines, missing } = suppliesOf([{ consumables: [glue(3, 'fl oz'), glue(40, 'mL'), glue(2, 'fl oz')], supplies: {} }, { consumables: [glue(1, 'mL')], supplies: {} }], 'USD');
    expect([lines, missing]).toEqual([[], [{ rate: 'bid.supplies.glue', of: '5 fl oz of wood glue' }, { rate: 'bid.supplies.glue', of: '41 mL of wood glue' }]]);
});
