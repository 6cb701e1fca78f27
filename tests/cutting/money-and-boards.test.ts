import { describe, expect, test } from 'vitest';
import { afterCutting } from '../../src/cutting/after-cutting.ts';
import { blankLength, blankOf, blankOver, type Blank } from '../../src/cutting/blank.ts';
import { kindsOf, worthOfOffcut } from '../../src/cutting/kinds.ts';
import type { Board, BoardPlan, Strip } from '../../src/cutting/model.ts';
import { sumMoney } from '../../src/cutting/money.ts';
import { offersOf, priceOf, purchasesOf } from '../../src/cutting/offers.ts';
import { boardsTaken } from '../../src/cutting/rest.ts';
import { ripsOf, rippedParts, stripNumbers } from '../../src/cutting/rips.ts';
import { keyOfCut } from '../../src/cutting/solve/layouts.ts';
import { spareOf } from '../../src/cutting/spare.ts';
import type { CutBoard, Room, Stock } from '../../src/job/model.ts';
import { inches, millimeters, Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT } from '../../src/quantity/ticks.ts';
import { jobBuilder } from '../support/job-builder.ts';
import { given, job, nowhere, piece, stock } from './samples.ts';

const feet = (n: number): number => n * TICKS_PER_FOOT;
const dollars = (amount: string) => ({ amount: new Rational(amount), currency: 'USD' });
const told = (money: readonly { amount: Rational; currency: string }[]): string[] => money.map(({ amount, currency }) => `${amount.toFraction()} ${currency}`);

describe('what boards cost', () => {
    const pine = stock({ feet: [16, 8, 12, 8], perFoot: '2', each: { 8: '12' } }), bought = [feet(8), feet(12), feet(10)];
    test('the price said for a length goes before that for every length; without either there is none', () => {
        expect([8, 10].map(n => priceOf(pine, feet(n))!.amount.toFraction())).toEqual(['12', '20']);
        expect(priceOf(stock({ each: { 8: '12' } }), feet(10))).toBeUndefined();
    });
    test('lengths that may come in, each once, the shortest first', () => {
        const lengths = (settings = job(), of = pine): number[] => offersOf(of, settings).map(({ length }) => length / TICKS_PER_FOOT);
        const upTo = (longest: number): number[] => lengths(job({ longestBoard: given(longest) }));
        expect([lengths(), upTo(feet(12)), upTo(feet(12) - 1)]).toEqual([[8, 12, 16], [8, 12], [8]]);
        expect(lengths(job(), { ...pine, lengths: [given(0), given(-5), given(feet(6))] })).toEqual([6]);
    });
    test('a shopping list, the longest first, without a cost where nobody says a price', () => {
        const offers = [{ length: feet(8), price: dollars('12') }, { length: feet(10) }];
        expect(purchasesOf([feet(8), feet(10), feet(8)], offers)).toEqual([
            { length: feet(10), count: 1 }, { length: feet(8), count: 2, each: dollars('12'), cost: { amount: new Rational(24), currency: 'USD' } },
        ]);
    });
    test('sums are one a currency, by its code', () => {
        const euros = { amount: new Rational(5), currency: 'EUR' };
        expect(told(sumMoney([dollars('1/3'), euros, dollars('2/3'), euros]))).toEqual(['10 EUR', '1 USD']);
        expect(sumMoney([])).toEqual([]);
    });
    // of 9 boards with one bad in ten, 9 / 0.9 = 10 are bought; of 10, 11.1 are, so 12
    test('spare boards are as long as the longest, as many as the share wants or as are said, whichever is more', () => {
        const spare = (count: number, of: Partial<Stock>) => spareOf({ ...pine, ...of }, Array.from({ length: count }, () => feet(8)))?.count;
        const tenth = { defects: given(new Rational(1, 10)) }, said = (least: number) => ({ ...tenth, spare: given(least) });
        expect([spare(9, tenth), spare(10, tenth), spare(10, said(1)), spare(10, said(3))]).toEqual([1, 2, 2, 3]);
        expect([spare(0, said(3)), spare(4, {})]).toEqual([undefined, undefined]);
        expect(spareOf({ ...pine, ...tenth }, bought)).toEqual({ length: feet(12), count: 1 });
    });
    test('an offcut is worth its share of the lowest price, where there is a price and a share', () => {
        const lower = { perTick: new Rational('1.2').div(TICKS_PER_FOOT), currency: 'USD', at: nowhere };
        const half = new Rational(1, 2), both = { ...pine, prices: [...pine.prices, lower] };
        // 12 dollars for 8 feet are 1.50 a foot
        expect([pine, both].map(of => told([worthOfOffcut(feet(3), of, half)!]))).toEqual([['9/4 USD'], ['9/5 USD']]);
        expect([worthOfOffcut(feet(3), pine, undefined), worthOfOffcut(feet(3), stock(), half)]).toEqual([undefined, undefined]);
    });
    test('boards on hand that are alike are one kind, less those that are gone, the shortest first and of one length the cheapest', () => {
        const at = (count: number, length: number, worth?: string) => given({ count, length, ...worth && { worth: dollars(worth) } });
        const onHand = [at(2, feet(8)), at(1, feet(6), '4'), at(1, feet(8)), at(1, feet(6)), at(3, inches(1)), at(0, feet(9)), at(2.9, feet(7)), at(99_999, feet(10))];
        const rack: Stock = { ...stock({ feet: [] }), onHand };
        const board = (length: number, worth?: string) => ({ from: 'on hand', length, ...worth && { worth: dollars(worth) } });
        const before = (...boards: ReturnType<typeof board>[]) =>
            [{ stocks: [{ stock: rack, boards: [...boards, { from: 'bought', length: feet(8) }] }] }] as unknown as BoardPlan[];
        const kinds = (gone: BoardPlan[] = []): string[] => kindsOf(rack, job(), [], 0, gone).all
            .map(({ length, available, cost }) => `${available} x ${length / TICKS_PER_FOOT} ${cost.toFraction()}`);
        expect(kinds()).toEqual(['1 x 6 0', '1 x 6 4', '2 x 7 0', '3 x 8 0', '10000 x 10 0']);
        expect(kinds(before(board(feet(8)), board(feet(6), '4'), board(feet(8))))).toEqual(['1 x 6 0', '2 x 7 0', '1 x 8 0', '10000 x 10 0']);
    });
    // a board of 2.4 m at a cent a millimeter, of which half is given for an offcut: by 300 mm from 600 on, as far as a piece may be left beside it
    test('boards that keep an offcut are reckoned by 300 mm where millimeters are shown, else by the foot', () => {
        const show = (as: 'millimeters' | 'feet-inches') => job({ show: given(as), offcutWorth: given(new Rational(1, 2)), shortestOffcut: given(millimeters(600)) });
        const wood: Stock = { ...stock({ feet: [] }), prices: [{ perTick: new Rational('0.01').div(millimeters(1)), currency: 'USD', at: nowhere }] };
        const kept = (settings: ReturnType<typeof job>): [number, number][] =>
            kindsOf(wood, settings, [{ length: millimeters(2400), price: dollars('24') }], 0, []).all.map(({ keeps = 0, cost }) => [keeps / millimeters(1), cost.valueOf()]);
        expect(kept(show('millimeters'))).toEqual([[0, 24], [600, 21], [900, 19.5], [1200, 18], [1500, 16.5], [1800, 15], [2100, 13.5]]);
        expect(kept(show('feet-inches')).map(([keeps]) => keeps)).toEqual([0, 600, 904.8, 1209.6, 1514.4, 1819.2, 2124]);
        expect(kept(job()).map(([keeps]) => keeps)).toEqual([0]);
    });
});

// a kerf of 1/8" at 45 degrees is 0.1768" along the board, on the next mark of a fine rule 23/128": 7/128" more; at 22.5 degrees 2/128", at 60 all of 1/8"
describe('what the blank of a mitered piece is longer', () => {
    const over = (degrees: readonly [number, number], settings = job({ cutTo: given(inches('1/128')) })): number => {
        const end = (angle: number) => (angle === 0 ? { cut: 'square' as const } : { cut: 'miter' as const, degrees: angle });
        return blankOver(piece('p', stock(), inches(40), { ends: [end(degrees[0]), end(degrees[1])] }), settings);
    };
    test('is what its steepest cut takes over a square one', () => {
        expect([over([0, 0]), over([45, 0]), over([0, -45]), over([22.5, 0]), over([22.5, 45]), over([60, 45])]).toEqual([0, '7/128', '7/128', '2/128', '7/128', '1/8'].map(inches));
        expect([over([90, 0]), over([90, 45])]).toEqual([0, '7/128'].map(inches));
    });
    test('down to a division of the tape, in its own marks', () => {
        expect([over([45, 0], job()), over([22.5, 0], job())]).toEqual([inches('1/32'), 0]);
        // 3 mm at 45 degrees are 4.243 mm, on the rule 4.3: 1.3 more
        const metric = (cutTo: string) => job({ show: given('millimeters'), cutTo: given(millimeters(cutTo)), kerf: given(millimeters(3)) });
        expect([over([45, 0], metric('0.1')), over([45, 0], metric('0.5'))]).toEqual(['1.3', '1'].map(millimeters));
    });
    test('and what a piece takes across the board: its width, or on edge its thickness, so many abreast', () => {
        const across = (width: string, thickness: string): string => {
            const blank = blankOf(piece('p', stock(), inches(40), { width: inches(width), thickness: inches(thickness) }), job());
            return typeof blank === 'string' ? blank : `${blank.width / inches(1)} ${blank.abreast}`;
        };
        // out of 5 1/2" by 3/4" with kerfs of 1/8"
        expect([across('5 1/2', '3/4'), across('2 11/16', '3/4'), across('2 3/4', '3/4'), across('3/4', '1/2'), across('1/2', '1/2'), across('1/2', '1')]).toEqual(
            ['5.5 1', '2.6875 2', '2.75 1', '0.5 9', '0.5 9', '1 5']);
        expect([across('1', '1'), across('6', '3/4')]).toEqual(['it is 1" thick, and pine-1x6 is 3/4"', 'it is 6" wide, and pine-1x6 is 5 1/2"']);
        // nobody says how thick it is: it lies flat
        const flat = blankOf(piece('p', { ...stock(), thickness: undefined }, inches(40), { width: inches(2), thickness: inches(1) }), job()) as Blank;
        expect([flat.width, flat.abreast]).toEqual([inches(2), 2]);
        const unknown = { ...stock(), width: undefined }, blank = blankOf(piece('p', unknown, inches(40), { width: inches(3) }), job()) as Blank;
        expect([blank.width, blank.abreast, blank.length, blankLength(blank.piece, job())]).toEqual([inches(3), 1, inches(40), inches(40)]);
    });
});

describe('boards that are ripped', () => {
    const strip = (rippedTo?: string, section?: number): Strip =>
        ({ pieces: [], offcut: 0, kept: false, ...rippedTo && { rippedTo: inches(rippedTo) }, ...section && { section } });
    const board = (number: number, strips: Strip[], more: Partial<Board> = {}): Board =>
        ({ number, length: feet(8), from: 'bought', strips, ...more });
    test('are gathered by how they are ripped, those with the most boards first, with what is left of their width', () => {
        const boards = [
            board(1, [strip('3/4'), strip('3/4')]), board(2, [strip()]), board(3, [strip('2 1/4'), strip('3/4')]), board(4, [strip('2 1/4'), strip('3/4')]),
            board(5, [strip(), strip('3/4', 1), strip('3/4', 1), strip('2 1/4', 2)], { sections: [inches(30), inches(20)] }), board(6, [strip('3/4'), strip('5')]),
        ];
        // 5 1/2" less each strip and its kerf of 1/8"; never less than nothing
        const inch = (ticks: number): number => ticks / inches(1);
        expect(ripsOf(boards, stock(), job()).map(({ section, widths, boards: numbers, left }) => `${numbers.join()}: ${
            widths.map(({ width, count }) => `${count} x ${inch(width)}`).join(', ')} of ${section === undefined ? 'all' : inch(section)}, ${inch(left)} left`)).toEqual([
            '3,4: 1 x 2.25, 1 x 0.75 of all, 2.25 left', '1: 2 x 0.75 of all, 3.75 left', '5: 2 x 0.75 of 30, 3.75 left', '5: 1 x 2.25 of 20, 3.125 left', '6: 1 x 5, 1 x 0.75 of all, 0 left',
        ]);
        expect(ripsOf([board(1, [strip('3/4')], { crosswise: true })], stock(), job())[0]!.left).toBe(feet(8) - inches('7/8'));
        expect(rippedParts(board(2, [strip()]))).toEqual([]);
    });
    test('number their strips through all sections, and last what keeps its whole width', () => {
        expect(stripNumbers({ strips: [strip('3/4', 1), strip(), strip('3/4', 2)] })).toEqual([1, 3, 2]);
        expect(stripNumbers({ strips: [strip()] })).toEqual([1]);
    });
});

describe('a job of which something is cut', () => {
    const pine = stock({ feet: [8, 12], perFoot: '2', onHand: [[1, feet(12)]] }), oak = stock({ name: 'oak', feet: [8] });
    const room = (name: string, cut: readonly [Stock, number][], spoiled: readonly string[] = []): Room => ({
        ...jobBuilder().room(name, {}), name, job: job(), spoiled: spoiled.map(given),
        cutBoards: cut.map(([of, length]): CutBoard => ({ at: nowhere, length: given(feet(length)), stock: given(of), into: [], left: [] })),
    });
    const plan = (...costs: string[]): BoardPlan => ({ stocks: [], costs: costs.map(dollars), unpriced: [], unplaced: [] });
    const den = room('den', [[pine, 8], [pine, 12], [oak, 8]], ['a', 'b']), hall = room('hall', [[pine, 12]]);
    const shop = [den, hall].map(each => ({ room: each, pieces: [] }));

    test('a board is one of those on hand while there are any of its length, else it was bought, the longest first', () => {
        expect(boardsTaken(shop).map(({ room: { name }, from, price }) => `${name} ${from} ${price?.amount.toFraction()}`)).toEqual([
            'den on hand undefined', 'hall bought 24', 'den bought 16', 'den bought undefined',
        ]);
    });
    test('what it was bought for and what is still to buy are held against a plan of all of it', () => {
        const { bought, toBuy, together, planned, ...counts } = afterCutting([den], shop, plan('10'), plan('30'))!;
        expect([told(bought), told(toBuy), told(together), told(planned)]).toEqual([['16 USD'], ['10 USD'], ['26 USD'], ['30 USD']]);
        expect(counts).toEqual({ boards: 3, spoiled: 2, unpriced: 1 });
        expect(afterCutting([den, hall], shop, plan(), plan('30'))).toMatchObject({ boards: 4, together: [{ amount: new Rational(40) }] });
    });
    test('where nothing is cut and nothing spoiled there is nothing to say', () => {
        expect(afterCutting([room('attic', [])], shop, plan('10'), plan('10'))).toBeUndefined();
        expect(afterCutting([room('attic', [], ['a'])], [], plan('10'), plan('10'))).toMatchObject({ boards: 0, spoiled: 1, bought: [] });
    });
});

test('plans in two currencies are not held against each other', () => {
    const of = (...currencies: string[]): boolean => {
        const offers = currencies.map((currency, i) => ({ length: feet(8 + 4 * i), price: { amount: new Rational(9 + i), currency } }));
        return kindsOf(stock(), job(), offers, inches(60), []).comparable;
    };
    expect([of('USD', 'USD'), of('USD', 'CAD')]).toEqual([true, false]);
});

test('two ways to cut a board are told apart by the section that a strip comes out of', () => {
    const cut = (...from: number[]): string => keyOfCut({
        board: 0, sections: [900, 600], strips: from.map(section => ({ lane: 1, section, picks: [[0, 1] as const] })),
    });
    expect(cut(0, 1)).not.toBe(cut(0, 0));
    expect(cut(0, 1)).toBe(cut(0, 1));
});
