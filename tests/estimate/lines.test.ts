import { describe, expect, test } from 'vitest';
import type { BoardPlan, Purchase } from '../../src/cutting/model.ts';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { compare, type Side } from '../../src/estimate/compare.ts';
import { estimateOf } from '../../src/estimate/estimate.ts';
import type { Estimate } from '../../src/estimate/model.ts';
import { laborOf, type PricedRoom } from '../../src/estimate/labor.ts';
import { materialsOf, suppliesOf, type Used } from '../../src/estimate/materials.ts';
import { divided } from '../../src/estimate/shares.ts';
import type { Stock } from '../../src/job/model.ts';
import type { Rates, Supplies } from '../../src/job/rates.ts';
import { Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM } from '../../src/quantity/ticks.ts';
import type { Consumable, Piece } from '../../src/takeoff/model.ts';
import { jobBuilder } from '../support/job-builder.ts';
import { NO_RATES } from '../support/no-rates.ts';
import { dollars, given } from './random-rates.ts';

/** Every figure here is reckoned by hand; the working stands beside it. */
const { stock, settings } = jobBuilder();
const oak = stock('oak', { thickness: '3/4"', width: '5 1/2"' }), ash = stock('ash', { thickness: '3/4"', width: '5 1/2"' });
const usd = (amount: number, currency = 'USD') => ({ amount: new Rational(amount), currency });
const foot = (feet: number): number => feet * TICKS_PER_FOOT;
interface OnHand { from: 'on hand' | 'bought' | 'cut'; length: number; worth?: ReturnType<typeof usd> }
/** Of a plan only what a price is made of. */
function planOf(...stocks: { stock: Stock; buy?: Purchase[]; boards?: OnHand[]; spare?: { length: number; count: number } }[]): BoardPlan {
    return { stocks: stocks.map(one => ({ buy: [], boards: [], ...one })), unplaced: [], costs: [] } as unknown as BoardPlan;
}

describe('what changes between a job and its alternate', () => {
    const side = (estimate: { total: number; minutes: number; days?: number }, plan: BoardPlan, pieces: [Piece['part'], number][]): Side => ({
        plan, pieces: pieces.map(([part, inches]) => ({ part, cutBack: inches * TICKS_PER_INCH }) as Piece),
        estimate: {
            sums: { total: new Rational(estimate.total) }, minutes: new Rational(estimate.minutes),
            ...estimate.days !== undefined && { days: new Rational(estimate.days) },
        } as Estimate,
    });
    const was = side({ total: 900, minutes: 600, days: 2 }, planOf(
        { stock: oak, buy: [{ length: foot(8), count: 3 }, { length: foot(12), count: 2 }] }, { stock: ash, buy: [{ length: foot(8), count: 5 }] },
    ), [['side', 50], ['side', 50], ['bottom', 50], ['trim', 40]]);
    // of oak one 8-foot board less in two purchases, 16-foot boards are new; of ash all the same
    const is = side({ total: 950, minutes: 540, days: 1 }, planOf(
        { stock: ash, buy: [{ length: foot(8), count: 5 }] },
        { stock: oak, buy: [{ length: foot(8), count: 1 }, { length: foot(8), count: 1 }, { length: foot(12), count: 2 }, { length: foot(16), count: 1 }] },
    ), [['side', 50], ['side', 49], ['bottom', 50], ['cleat', 10]]);
    const numbers = (change: { before: Rational; after: Rational } | undefined) => change && [change.before.valueOf(), change.after.valueOf()];

    test('money, minutes and days stand side by side, days only where both have them', () => {
        const { total, minutes, days } = compare(was, is);
        expect([numbers(total), numbers(minutes), numbers(days)]).toEqual([[900, 950], [600, 540], [2, 1]]);
        expect('days' in compare(was, side({ total: 1, minutes: 1 }, planOf(), []))).toBe(false);
        expect('days' in compare(side({ total: 1, minutes: 1 }, planOf(), []), is)).toBe(false);
    });
    test('boards that differ in number, by stock, the longest first; several purchases of one length count together', () => {
        expect(compare(was, is).boards).toEqual([
            { stock: 'oak', length: foot(16), before: 0, after: 1 }, { stock: 'oak', length: foot(8), before: 3, after: 2 },
        ]);
        // the other way round, with what is gone altogether, stocks by name
        const back = compare(is, side({ total: 1, minutes: 1 }, planOf({ stock: oak, buy: [{ length: foot(16), count: 1 }] }), [])).boards;
        expect(back.map(({ stock: name, length, before, after }) => `${name} ${length / TICKS_PER_FOOT} ${before}-${after}`))
            .toEqual(['ash 8 5-0', 'oak 12 2-0', 'oak 8 2-0']);
        expect(compare(was, side({ total: 1, minutes: 1 }, planOf(), [])).boards.map(({ stock: name }) => name)).toEqual(['ash', 'oak', 'oak']);
    });
    test('pieces that differ in number or in length, by part', () => {
        expect(compare(was, is).pieces.map(({ part, before, after, feet }) =>
            [part, before, after, feet.before / TICKS_PER_INCH, feet.after / TICKS_PER_INCH])).toEqual([
            ['side', 2, 2, 100, 99], ['cleat', 0, 1, 0, 10], ['trim', 1, 0, 40, 0],
        ]);
        expect(compare(was, was)).toMatchObject({ boards: [], pieces: [] });
        // two of 50" or one of 100": as many feet, another number
        const sides = (...lengths: number[]): Side => side({ total: 1, minutes: 1 }, planOf(), lengths.map(length => ['side', length]));
        expect(compare(sides(50, 50), sides(100)).pieces).toMatchObject([{ part: 'side', before: 2, after: 1 }]);
    });
});

describe('boards', () => {
    test('to buy, a line a length; those without a price, or in other money, are missing and in no sum', () => {
        const { lines, missing } = materialsOf(planOf(
            { stock: oak, buy: [{ length: foot(12), count: 3, each: usd(20.25) }, { length: foot(8), count: 2 }], spare: { length: foot(12), count: 1 } },
            { stock: ash, buy: [{ length: foot(10), count: 4, each: usd(7, 'EUR') }] },
        ), 'USD', 'feet-inches');
        // 3 x 20.25
        expect(lines.map(({ stock: { name }, length, count, spare, onHand, each, amount }) =>
            [name, length / TICKS_PER_FOOT, count, spare, onHand, each.valueOf(), amount.valueOf()])).toEqual([['oak', 12, 3, 1, false, 20.25, 60.75]]);
        expect(missing.map(({ of }) => of)).toEqual([`2 x 8' of oak`, `4 x 10' of ash, which is priced in EUR`]);
    });
    test('on hand are reckoned at their worth or at no cost, those of one length and worth together; what is bought or cut has no line of its own', () => {
        const board = (from: OnHand['from'], feet: number, worth?: ReturnType<typeof usd>): OnHand => ({ from, length: foot(feet), ...worth && { worth } });
        const { lines, missing } = materialsOf(planOf(
            { stock: oak, boards: [
                board('on hand', 6, usd(4)), board('on hand', 6, usd(4)), board('on hand', 6, usd(5)), board('on hand', 7, usd(4)), board('on hand', 6),
            ] },
            { stock: ash, boards: [
                board('on hand', 6, usd(4)), board('on hand', 6, usd(0)), board('on hand', 6, usd(4, 'EUR')),
                board('bought', 6, usd(4)), board('cut', 6, usd(4)),
            ] },
        ), 'USD', 'feet-inches');
        expect(lines.map(({ stock: { name }, length, count, onHand, each, amount }) =>
            `${name} ${length / TICKS_PER_FOOT} ${count} x ${each.valueOf()} = ${amount.valueOf()} ${onHand}`)).toEqual([
            'oak 6 2 x 4 = 8 true', 'oak 6 1 x 5 = 5 true', 'oak 7 1 x 4 = 4 true', 'oak 6 1 x 0 = 0 true', 'ash 6 1 x 4 = 4 true', 'ash 6 1 x 0 = 0 true',
        ]);
        expect(missing.map(({ of }) => of)).toEqual([`1 x 6' of ash on hand, whose worth is in EUR`]);
    });
});

describe('supplies', () => {
    const used = (supplies: Partial<Supplies>, ...consumables: Partial<Consumable>[]): Used =>
        ({ supplies: supplies as Supplies, consumables: consumables as Consumable[] });
    test('of one name at one price count together, each room with its own count; without a price, or in other money, they are missing', () => {
        const screws = dollars('0.11'), nails = { kind: 'nails', what: 'nails, trim', unit: 'pieces' } as const;
        const { lines, missing } = suppliesOf([
            used({ screws }, { kind: 'screws', what: '#8 screws', unit: 'pieces', count: 40 }, { ...nails, count: 7 }),
            used({ screws },
                { kind: 'screws', what: '#8 screws', unit: 'pieces', count: 2 }, { kind: 'screws', what: '#10 screws', unit: 'pieces', count: 5 },
                { ...nails, count: 3 }),
        ], 'USD');
        expect(lines.map(({ what, count, counts, amount }) => [what, count, counts, amount.valueOf()])).toEqual([
            ['#8 screws', 42, [40, 2], 4.62], ['#10 screws', 5, [0, 5], 0.55],                            // 42 and 5 at 0.11
        ]);
        expect(missing).toEqual([{ rate: 'bid.supplies.nails', of: '10 pieces of nails, trim' }]);
        expect(suppliesOf([used({ screws: given(usd(1, 'EUR')) }, { kind: 'screws', what: '#8 screws', unit: 'pieces', count: 4 })], 'USD').missing)
            .toEqual([{ rate: 'bid.supplies.screws', of: '4 pieces of #8 screws' }]);
    });
});

// A milliliter is a cubic centimeter; a US gallon of 231 cubic inches has 128 fluid ounces (NIST Handbook 44, appendix C)
test.each([['mL', 1000 * TICKS_PER_MM ** 3], ['fl oz', 231 / 128 * TICKS_PER_INCH ** 3]])('glue is priced by its volume: %s', (unit, ticks) => {
    const glue: Consumable = { kind: 'glue', what: 'wood glue', count: 3, unit, by: '', basis: '' };
    const price = given({ amount: new Rational(2).div(new Rational(ticks)), currency: 'USD' });
    expect(suppliesOf([{ consumables: [glue], supplies: { glue: price } }], 'USD').lines.map(({ each, amount }) => [each.valueOf(), amount.valueOf()])).toEqual([[2, 6]]);
});

test('what nobody has timed is missing with its room, and with the rates that hold there', () => {
    const { labor } = NO_RATES, { at } = labor.day;
    expect(laborOf([], 3, labor)).toStrictEqual({ lines: [], missing: [{ rate: 'labor.set-up', of: '3 fences and stops set' }] });
    expect(laborOf([], 3, { ...labor, at })).toStrictEqual({ lines: [], missing: [{ rate: 'labor.set-up', of: '3 fences and stops set', at }] });
    expect(laborOf([], 0, labor)).toEqual({ lines: [], missing: [] });
});

test('a sum is divided by weights, and evenly where none weighs anything', () => {
    const shares = (...weights: number[]): number[] => divided(new Rational(12), weights.map(weight => new Rational(weight))).map(share => share.valueOf());
    expect([shares(1, 2, 3), shares(0, 5), shares(0, 0, 0)]).toEqual([[2, 4, 6], [0, 12], [4, 4, 4]]);
});

describe('what is missing of an estimate', () => {
    const profit = given({ share: new Rational(1, 10), of: 'cost' as const }), at = NO_RATES.labor.day.at;
    interface Over { labor?: Partial<Rates['labor']>; bid?: Partial<Rates['bid']> }
    test.each<[string, Over, string[]]>([
        ['nothing said', {}, ['labor: all work: there is no labor block in this folder or above it', 'bid.profit: the profit']],
        ['all that there has to be', { labor: { at }, bid: { profit } }, []],
        ['a delivery in other money, and an allowance', { labor: { at }, bid: { profit, delivery: given(usd(80, 'EUR')), allowances: [given(usd(5, 'CAD'))] } },
            ['currency: what is priced in EUR: the job is in USD', 'currency: what is priced in CAD: the job is in USD']],
        ['other money, said twice, is told once', { labor: { at }, bid: { profit, minimum: given(usd(80, 'EUR')), delivery: given(usd(80, 'EUR')) } },
            ['currency: what is priced in EUR: the job is in USD']],
        ['an hour in other money', { labor: { at, rate: given(usd(40, 'EUR')) }, bid: { profit } }, ['currency: what is priced in EUR: the job is in USD']],
    ])('%s', (_, { labor, bid }, wanted) => {
        // the job says its money, so that no other is taken for it
        const job = { ...settings(), currency: { ...settings().currency, said: true } };
        const { missing } = estimateOf({
            parts: [{ rates: { labor: { ...NO_RATES.labor, ...labor }, bid: { ...NO_RATES.bid, ...bid } }, rooms: [] }],
            plan: planBoards([], job), setUps: 0,
        }, job);
        expect(missing.map(one => `${one.rate}: ${one.of}`)).toEqual(wanted);
    });
    test('what only some of the rooms have is called by their names', () => {
        const room = (name: string) => ({
            takeOff: { room: name, pieces: [], joints: [], consumables: [], leftOut: [] },
            ceiling: { lines: [], crossings: [], coffers: [], room: { job: settings() } },
        });
        const part = (bid: Partial<Rates['bid']>, ...names: string[]) => ({
            rates: { labor: { ...NO_RATES.labor, at }, bid: { ...NO_RATES.bid, ...bid } }, rooms: names.map(room) as unknown as readonly PricedRoom[],
        });
        const { additions, missing } = estimateOf({
            parts: [part({ profit, delivery: given(usd(80)) }, 'den', 'hall'), part({}, 'attic')], plan: planBoards([], settings()), setUps: 0,
        }, settings());
        // 10 % of 80
        expect(additions.map(({ what, amount }) => [what, amount.valueOf()])).toEqual([['delivery, den, hall', 80], ['profit (markup), den, hall', 8]]);
        expect(missing.map(({ of }) => of)).toEqual(['the profit, attic']);
    });
    test('an allowance is called by what it is for, and else an allowance', () => {
        const { additions } = estimateOf({
            parts: [{
                rates: { labor: NO_RATES.labor, bid: { ...NO_RATES.bid, allowances: [given({ ...usd(250), for: 'paint' }), given(usd(9))] } }, rooms: [],
            }],
            plan: planBoards([], settings()), setUps: 0,
        }, settings());
        expect(additions.map(({ what, amount }) => [what, amount.valueOf()])).toEqual([['paint', 250], ['allowance', 9]]);
    });
});
