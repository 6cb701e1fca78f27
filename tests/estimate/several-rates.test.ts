import { describe, expect, test } from 'vitest';
import type { BoardPlan } from '../../src/cutting/model.ts';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { estimateOf, type Part } from '../../src/estimate/estimate.ts';
import { laborOf, type PricedRoom } from '../../src/estimate/labor.ts';
import type { MaterialLine } from '../../src/estimate/model.ts';
import { materialsByPart } from '../../src/estimate/shares.ts';
import { sameStatement, statementsOf } from '../../src/estimate/statements.ts';
import type { Rates, Sum } from '../../src/job/rates.ts';
import type { Given } from '../../src/provenance/source.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import type { Consumable, Piece } from '../../src/takeoff/model.ts';
import { piece, stock } from '../cutting/samples.ts';
import { jobBuilder } from '../support/job-builder.ts';
import { NO_RATES } from '../support/no-rates.ts';
import { given } from './random-rates.ts';

/** Rooms under rates of several folders. Every figure is reckoned by hand. */
const { settings } = jobBuilder();
interface Over { labor?: Partial<Rates['labor']>; bid?: Partial<Rates['bid']> }
const ratesOf = ({ labor, bid }: Over): Rates => ({ labor: { ...NO_RATES.labor, ...labor }, bid: { ...NO_RATES.bid, ...bid } });
const roomOf = (name: string, pieces: readonly Piece[] = [], consumables: readonly Consumable[] = []): PricedRoom => ({
    takeOff: { room: name, pieces, joints: [], consumables, leftOut: [] }, ceiling: { lines: [], crossings: [], coffers: [], room: { job: settings() } } as unknown as PricedRoom['ceiling'],
});
const partOf = (over: Over, ...rooms: PricedRoom[]): Part => ({ rates: ratesOf(over), rooms });
const emptyPlan = planBoards([], settings());
const at = (folder: string, line = 1) => ({ uri: `file:///job/${folder}rates.coffer`, range: { start: { line, character: 0 }, end: { line, character: 9 } } });
const saidAt = <T>(value: T, folder: string, line = 1): Given<T> => ({ value, at: at(folder, line), said: true });
const money = (amount: number, currency: string): Sum => ({ amount: new Rational(amount), currency });

test('nothing to price is priced at nothing, takes no days and has nobody\'s currency but the usual one', () => {
    const estimate = estimateOf({ parts: [], plan: emptyPlan, setUps: 5 }, settings());
    expect(Object.values(estimate.sums).map(sum => sum.valueOf())).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0]);
    expect([estimate.currency, estimate.labor, estimate.missing, 'days' in estimate]).toEqual(['USD', [], [], false]);
});

describe('the money of a job that does not say its own', () => {
    const eur = given(money(4, 'EUR'));
    const boards = { ...emptyPlan, costs: [{ currency: 'NOK', amount: new Rational(1) }] } as unknown as BoardPlan;
    test.each<[string, Over, BoardPlan, string]>([
        ['an hour\'s', { labor: { rate: eur }, bid: { delivery: given(money(4, 'SEK')) } }, boards, 'EUR'],
        ['the delivery\'s', { bid: { delivery: eur, minimum: given(money(4, 'SEK')) } }, boards, 'EUR'],
        ['that of the minimum', { bid: { minimum: eur, allowances: [given(money(4, 'SEK'))] } }, boards, 'EUR'],
        ['that of an allowance', { bid: { allowances: [eur] } }, boards, 'EUR'],
        ['that of the boards', {}, boards, 'NOK'], ['the usual one', {}, emptyPlan, 'USD'],
    ])('%s', (_, over, plan, wanted) => {
        expect(estimateOf({ parts: [partOf(over)], plan, setUps: 0 }, settings()).currency).toBe(wanted);
    });
});

describe('who sets the saw', () => {
    const minutes = (amount: number, folder: string) => ({ labor: { byCount: { 'set-up': saidAt(new Rational(amount), folder) }, rate: given(money(60, 'USD')) } });
    // 7 set-ups of 10, 4 or 3 minutes at a dollar a minute
    test.each<[string, Over[], number]>([
        ['the one by itself', [minutes(10, '')], 70], ['the folder nearest the root, first', [minutes(4, ''), minutes(10, 'attic/')], 28],
        ['the folder nearest the root, last', [minutes(10, 'attic/'), minutes(4, '')], 28], ['the only one that says', [{}, minutes(3, 'attic/')], 21],
    ])('%s', (_, overs, wanted) => {
        const { labor, sums } = estimateOf({ parts: overs.map((over, i) => partOf(over, roomOf(`room-${i}`))), plan: emptyPlan, setUps: 7 }, settings());
        expect([labor.length, sums.labor.valueOf()]).toEqual([1, wanted]);
    });
    test('saw set-ups belong to no room', () => {
        expect(laborOf([], 2, ratesOf(minutes(10, '')).labor).lines).toStrictEqual([expect.not.objectContaining({ room: undefined })]);
    });
});

describe('crew and days', () => {
    const crew = (people: number | undefined, hours: number) => ({ labor: {
        ...people !== undefined && { crew: given(people) }, day: given(new Rational(60 * hours)), byCount: { 'set-up': given(new Rational(480)) },
    } });
    test.each<[string, Over[], number | undefined, number | undefined]>([
        ['two people for eight hours', [crew(2, 8), crew(2, 8)], 2, 1], ['crews that differ: no crew of all', [crew(2, 8), crew(1, 8)], undefined, 1],
        ['the other way round', [crew(1, 8), crew(2, 8)], undefined, 2], ['no crew in one room: nobody knows the days', [crew(2, 8), crew(undefined, 8)], undefined, undefined],
        ['a day of no hours', [crew(2, 0)], 2, undefined],
    ])('%s', (_, overs, people, days) => {
        // 2 set-ups of 480 minutes, by the first
        const estimate = estimateOf({ parts: overs.map((over, i) => partOf(over, roomOf(`room-${i}`))), plan: emptyPlan, setUps: 2 }, settings());
        expect([estimate.crew, estimate.days?.valueOf(), estimate.minutes.valueOf()]).toEqual([people, days, 960]);
    });
});

test('hours without a wage are told in tenths, rounded up', () => {
    const spacers = Array.from({ length: 7 }, (_, i) => piece(`s${i}`, stock(), inches(5), { part: 'spacer', line: null }));
    const blocking = piece('b', stock(), inches(60), { part: 'blocking', line: null });
    const over = { labor: { at: at(''), byCount: { spacer: given(new Rational(20)) }, byLength: { blocking: given(new Rational(1).div(inches(12))), side: given(new Rational(9)) } } };
    const { missing, labor } = estimateOf({ parts: [partOf(over, roomOf('den', [...spacers, blocking, { ...blocking, id: 't', part: 'trim' }]))], plan: emptyPlan, setUps: 0 }, settings());
    // 5 feet at a minute and 7 spacers at 20 minutes: 145 minutes are 2.42 hours
    expect(labor.map(({ phase, what, minutes }) => [phase, what, minutes.valueOf()])).toEqual([['blocking', 'blocking', 5], ['blocking', 'spacers', 140]]);
    expect(missing.map(({ rate, of }) => `${rate}: ${of}`)).toEqual(['labor.trim: 5\' of trim', 'labor.crew: 2.5 hours of work: give crew ... rate', 'bid.profit: the profit']);
});

test('panels are timed by the piece', () => {
    const panels = Array.from({ length: 6 }, (_, i) => piece(`p${i}`, stock(), inches(50), { part: 'panel', line: null })), parts = (over: Over) => [partOf(over, roomOf('den', panels))];
    const { labor } = estimateOf({ parts: parts({ labor: { at: at(''), byCount: { panel: given(new Rational(25)) }, byLength: {} } }), plan: emptyPlan, setUps: 0 }, settings());
    expect(labor.map(({ phase, what, minutes }) => [phase, what, minutes.valueOf()])).toEqual([['blocking', 'panels', 150]]);
    expect(estimateOf({ parts: parts({ labor: { at: at(''), byCount: {}, byLength: {} } }), plan: emptyPlan, setUps: 0 }, settings()).missing.map(({ rate, of }) => `${rate}: ${of}`)).toContain('labor.panels: 6 panels');
});

test('shares are told with what they are a share of', () => {
    const bid = { allowances: [given(money(200, 'USD'))], contingency: given(new Rational(1, 20)), profit: given({ share: new Rational(1, 5), of: 'price' as const }) };
    const { additions } = estimateOf({ parts: [partOf({ bid })], plan: emptyPlan, setUps: 0 }, settings());
    // 5 % of 200; a fifth of a price is a quarter of the cost of 210: 52.50 of 262.50
    expect(additions.map(({ kind, share }) => [kind, share && [share.share.valueOf(), share.of.valueOf(), share.ofWhat]])).toEqual([
        ['allowance', undefined], ['contingency', [0.05, 200, 'what it costs']], ['profit', [0.2, 262.5, 'the price']],
    ]);
});

test('of each stock the rooms bear what its faces in them are of all of it', () => {
    const pine = stock(), ash = stock({ name: 'ash-1x6' });
    const own = [piece('a', pine, inches(30)), piece('b', ash, inches(10))], others = [piece('c', pine, inches(10)), piece('d', ash, inches(10), { width: inches(11) })];
    const boardsOf = (wood: typeof pine) => [{ strips: [{ pieces: [...own, ...others].filter(one => one.stock === wood) }] }];
    const plan = { stocks: [pine, ash].map(wood => ({ stock: wood, boards: boardsOf(wood) })) } as unknown as BoardPlan;
    const lines = [{ stock: pine, amount: new Rational(40) }, { stock: ash, amount: new Rational(9) }] as unknown as MaterialLine[];
    // pine 30 to 10 of 40; ash, twice as wide there, 1 to 2 of 9
    expect(materialsByPart(lines, plan, [{ rooms: [roomOf('den', own)] }, { rooms: [roomOf('hall', others)] }]).map(sum => sum.valueOf())).toEqual([33, 16]);
});

test('supplies that come to none cost nobody anything', () => {
    const screws: Consumable = { kind: 'screws', what: '#8 screws', count: 0, unit: 'pieces', by: '', basis: '' };
    const over = { bid: { supplies: { screws: given(money(2, 'USD')) } } };
    const counts = (count: number) => estimateOf({ parts: [partOf(over, roomOf('den', [], [{ ...screws, count }]))], plan: emptyPlan, setUps: 0 }, settings());
    expect([counts(0), counts(3)].map(({ sums, parts }) => [sums.supplies, sums.cost, parts[0]!.total].map(sum => sum.valueOf())))
        .toEqual([[0, 0, 0], [6, 6, 6]]);
});

describe('one statement', () => {
    const here = saidAt(1, ''), there = saidAt(1, 'attic/'), below = saidAt(1, '', 2);
    test.each<[string, Given<number> | undefined, Given<number> | undefined, boolean]>([
        ['the same words', here, saidAt(2, ''), true], ['other words of the same file', here, below, false], ['of another file', here, there, false],
        ['said here alone', here, undefined, false], ['said there alone', undefined, here, false], ['nowhere', undefined, undefined, true],
    ])('%s', (_, a, b, wanted) => {
        expect(sameStatement(a, b)).toBe(wanted);
    });
    test('holds for all rooms that have it; said twice in one room it is two', () => {
        expect(statementsOf([[here, below], [here], [there, here]]).map(({ given: { at: where }, parts }) => [where, parts])).toEqual([
            [here.at, [0, 1, 2]], [below.at, [0]], [there.at, [2]],
        ]);
        expect(statementsOf([[here, saidAt(3, '')]]).map(({ parts }) => parts)).toEqual([[0], [0]]);
    });
});
