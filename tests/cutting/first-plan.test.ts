import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stripsAcross } from '../../src/cutting/blank.ts';
import { planBoards } from '../../src/cutting/first-plan.ts';
import type { BoardPlan } from '../../src/cutting/model.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT } from '../../src/quantity/ticks.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { checkPlan } from './checker.ts';
import { given, job, piece, stock, type StockSample } from './samples.ts';
import { runs } from '../support/full.ts';

const bought = (plan: BoardPlan): string[] => plan.stocks.flatMap(s => s.buy.map(p => `${p.count} x ${p.length / TICKS_PER_FOOT}'`));
const money = (plan: BoardPlan): string[] => plan.costs.map(c => `${c.amount.toFraction()} ${c.currency}`);
const several = (count: number, make: (id: string) => Piece): Piece[] => Array.from({ length: count }, (_, i) => make(`p${String(i).padStart(3, '0')}`));

/** Plans, has the plan checked, and hands it back. */
function plan(pieces: readonly Piece[], settings = job(), before: readonly BoardPlan[] = []): BoardPlan {
    const made = planBoards(pieces, settings, before);
    checkPlan(made, pieces, settings);
    return made;
}

describe('a first plan of the boards to buy', () => {
    test('kerfs and end trim count', () => {
        const pieces = several(3, id => piece(id, stock({ feet: [16], perFoot: '2' }), inches('63 5/8')));
        // 3 x 63 5/8 = 190 7/8; with two kerfs of 1/8" and 1" of end trim 192 1/8", with two of 1/16" just 192".
        expect(bought(plan(pieces))).toEqual(["2 x 16'"]);
        expect(bought(plan(pieces, job({ kerf: given(inches('1/16')) })))).toEqual(["1 x 16'"]);
        expect(bought(plan(pieces, job({ endTrim: given(inches('3/4')) })))).toEqual(["1 x 16'"]);
    });

    test('the last piece may end where the trim begins', () => {
        const pine = stock({ feet: [8], perFoot: '1' });
        // 2 x 47 7/16 + 1/8 + 1 = 96, and a 1/128" more does not fit.
        expect(bought(plan(several(2, id => piece(id, pine, inches('47 7/16')))))).toEqual(["1 x 8'"]);
        expect(bought(plan(several(2, id => piece(id, pine, inches('47 7/16') + 127))))).toEqual(["2 x 8'"]);
    });

    test('a mitered piece takes a longer cut along the board', () => {
        const pine = stock({ feet: [8], perFoot: '1' });
        const mitered = (id: string): Piece => piece(id, pine, inches('47 7/16'), { ends: [{ cut: 'miter', degrees: 45 }, { cut: 'square' }] });
        expect(bought(plan(several(2, mitered)))).toEqual(["2 x 8'"]);
    });

    test('the long point counts, not the face', () => {
        const pine = stock({ feet: [8], perFoot: '1' });
        expect(bought(plan(several(2, id => piece(id, pine, inches(46), { cutBack: inches(48), back: inches(48) }))))).toEqual(["2 x 8'"]);
    });

    test('the length is chosen by cost: two 8s for less than a 16', () => {
        const pieces = (each: Record<number, string>): Piece[] => several(2, id => piece(id, stock({ feet: [8, 16], each }), inches(90)));
        expect(bought(plan(pieces({ 8: '10', 16: '24' })))).toEqual(["2 x 8'"]);
        expect(bought(plan(pieces({ 8: '14', 16: '24' })))).toEqual(["1 x 16'"]);
    });

    test('what is expected to be unusable is bought besides, as long as the longest', () => {
        const pine = stock({ feet: [8, 16], each: { 8: '10', 16: '24' } });
        const with_ = (spared: Partial<typeof pine>): BoardPlan => plan(['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i'].map(id => piece(id, { ...pine, ...spared }, id === 'a' ? inches(180) : inches(90))));
        const share = (text: string): Partial<typeof pine> => ({ defects: given(new Rational(text)) });
        expect(bought(with_({}))).toEqual(["1 x 16'", "8 x 8'"]);
        // of ten boards a tenth is bad, and nine are wanted
        expect(bought(with_(share('1/10')))).toEqual(["2 x 16'", "8 x 8'"]);
        expect(bought(with_(share('0.11')))).toEqual(["3 x 16'", "8 x 8'"]);
        expect(money(with_(share('1/10')))).toEqual(['128 USD']);
        expect(bought(with_({ spare: given(2) }))).toEqual(["3 x 16'", "8 x 8'"]);
        expect(bought(with_({ ...share('1/10'), spare: given(2) })), 'the larger of the two').toEqual(["3 x 16'", "8 x 8'"]);
        expect(bought(with_(share('0')))).toEqual(["1 x 16'", "8 x 8'"]);
    });

    test('money is exact: 3 boards of 10/3 dollars are ten dollars', () => {
        const made = plan(several(3, id => piece(id, stock({ feet: [8], each: { 8: '10/3' } }), inches(90))));
        expect(money(made)).toEqual(['10 USD']);
    });

    test('the longest board that may come into the house holds for what is bought', () => {
        const pine = stock({ feet: [8, 16], perFoot: '1' });
        expect(bought(plan(several(2, id => piece(id, pine, inches(60))), job({ longestBoard: given(12 * TICKS_PER_FOOT) })))).toEqual(["2 x 8'"]);
    });

    test('what is on hand goes first, and an offcut before a board', () => {
        const pine = stock({ feet: [8], perFoot: '1', onHand: [[1, inches(112)], [1, inches(52)]] });
        const made = plan([piece('a', pine, inches('50 7/8')), piece('b', pine, inches(90))]);
        expect(made.stocks[0]!.boards.map(b => [b.from, b.length])).toEqual([['on hand', inches(52)], ['on hand', inches(112)]]);
        expect(money(made)).toEqual([]);
        expect(bought(made)).toEqual([]);
    });

    test('what one plan takes from what is on hand is gone for the next', () => {
        const pine = stock({ feet: [8], perFoot: '1', onHand: [[1, inches(96)]] });
        const first = plan([piece('a', pine, inches(90))]);
        expect(bought(first)).toEqual([]);
        expect(bought(plan([piece('b', pine, inches(90))], job(), [first]))).toEqual(["1 x 8'"]);
    });

    test('a stock without a price is named, never counted as nothing', () => {
        const made = plan([piece('a', stock({ name: 'oak' }), inches(90)), piece('b', stock({ name: 'pine', perFoot: '2' }), inches(90))]);
        expect(made.unpriced.map(u => [u.stock.name, u.length, u.count])).toEqual([['oak', 8 * TICKS_PER_FOOT, 1]]);
        expect(money(made)).toEqual(['16 USD']);
        expect(made.stocks.find(s => s.stock.name === 'oak')!.costs).toEqual([]);
    });

    test('a length without a price is bought only where no priced one is long enough', () => {
        const pine = stock({ feet: [8, 12, 16], each: { 12: '20' } });
        expect(bought(plan([piece('a', pine, inches(60))]))).toEqual(["1 x 12'"]);
        const long = plan([piece('a', pine, inches(60)), piece('b', pine, inches(180))]);
        expect(long.unpriced.map(u => u.length / TICKS_PER_FOOT)).toEqual([16]);
    });

    test('a piece that comes out of no board says why', () => {
        const pine = stock({ feet: [8, 12], perFoot: '1' });
        const reasons = (of: Piece, settings = job()): string[] => plan([of], settings).unplaced.map(u => u.reason);
        expect(reasons(piece('a', pine, inches(150)))).toEqual([`it is 12' 6", and the longest pine-1x6 is 12', 11' 11" without its ends`]);
        expect(reasons(piece('a', stock({ feet: [] }), inches(50)))).toEqual(['pine-1x6 has no `lengths` that it is sold in']);
        expect(reasons(piece('a', stock({ feet: [16] }), inches(50)), job({ longestBoard: given(inches(120)) }))).toEqual([`no pine-1x6 is sold that is at most 10' long`]);
        expect(reasons(piece('a', pine, inches(50), { width: inches('5 9/16'), ripped: true }))).toEqual(['it is 5 9/16" wide, and pine-1x6 is 5 1/2"']);
        expect(reasons(piece('a', pine, inches(50), { width: inches(1), thickness: inches(1), ripped: true }))).toEqual(['it is 1" thick, and pine-1x6 is 3/4"']);
        expect(reasons(piece('a', pine, Number.NaN))).toEqual(['it has no length']);
        expect(reasons(piece('a', pine, 0))).toEqual(['it has no length']);
    });

    test('pieces that only one of the long boards on hand is wide enough for are cut as far as it goes', () => {
        const pine = stock({ feet: [8], perFoot: '1', onHand: [[1, inches(192)], [1, inches(180), inches(2)]] });
        const rip = { width: inches(4), ripped: true };
        const { unplaced, stocks } = plan([piece('a', pine, inches(150), rip), piece('b', pine, inches(150), rip)]);
        expect(unplaced.map(({ reason }) => reason)).toEqual([`it is 12' 6", and the longest pine-1x6 is 8', 7' 11" without its ends; the one on hand that is long enough, 16', goes to other pieces`]);
        expect(stocks[0]!.boards.map(({ from, length }) => [from, length])).toEqual([['on hand', inches(192)]]);
    });

    test('of boards on hand that alone are long enough there may be too few: the others are cut all the same', () => {
        const pine = stock({ feet: [8], perFoot: '1', onHand: [[1, inches(192)]] });
        const made = plan([...several(2, id => piece(id, pine, inches(150))), piece('short', pine, inches(60))]);
        expect(made.unplaced.map(({ reason }) => reason)).toEqual([`it is 12' 6", and the longest pine-1x6 is 8', 7' 11" without its ends; the one on hand that is long enough, 16', goes to other pieces`]);
        const more = stock({ feet: [8], perFoot: '1', onHand: [[1, inches(192)], [2, inches(156)], [1, inches(96)]] });
        expect(plan(several(4, id => piece(id, more, inches(150)))).unplaced.map(({ reason }) => reason))
            .toEqual([`it is 12' 6", and the longest pine-1x6 is 8', 7' 11" without its ends; the 3 on hand that are long enough, 16' at the longest, go to other pieces`]);
        expect(bought(made)).toEqual(["1 x 8'"]);
        expect(made.stocks[0]!.boards.map(({ from, strips }) => [from, strips[0]!.pieces.length])).toEqual([['on hand', 1], ['bought', 1]]);
    });
});

describe('strips ripped from wider boards', () => {
    test('a 5 1/2" board gives six strips of 3/4" with a 1/8" kerf, and one of 5 7/16"', () => {
        expect(stripsAcross(inches('5 1/2'), inches('3/4'), inches('1/8'))).toBe(6);
        expect(stripsAcross(inches('5 1/2'), inches('5 7/16'), inches('1/8'))).toBe(1);
        expect(stripsAcross(inches('1 1/2'), inches('3/4'), inches('1/8'))).toBe(1);
        expect(stripsAcross(inches('1 5/8'), inches('3/4'), inches('1/8'))).toBe(2);
        expect(stripsAcross(inches('5 1/2'), 0, 0)).toBe(0);
    });

    test('twelve cleats of 90" come out of two 8 footers, six abreast', () => {
        const made = plan(several(12, id => piece(id, stock({ feet: [8], perFoot: '1' }), inches(90), { part: 'cleat', width: inches('3/4'), ripped: true })));
        expect(bought(made)).toEqual(["2 x 8'"]);
        expect(made.stocks[0]!.boards.every(b => b.strips.length === 6 && b.strips.every(s => s.rippedTo === inches('3/4')))).toBe(true);
    });

    test('a strip ripped on edge: 1/2" across the board, 3/4" as thick as the board', () => {
        const made = plan(several(9, id => piece(id, stock({ feet: [8], perFoot: '1' }), inches(90), { part: 'cleat', width: inches('3/4'), thickness: inches('1/2'), ripped: true })));
        // floor((5 1/2 + 1/8) / (1/2 + 1/8)) = 9
        expect(made.stocks[0]!.boards[0]!.strips).toHaveLength(9);
    });

    test('a piece that is ripped by a hair shares its board with full-width ones', () => {
        const pine = stock({ feet: [8], perFoot: '1' });
        const made = plan([piece('a', pine, inches(46)), piece('b', pine, inches(46), { width: inches('5 7/16'), ripped: true })]);
        expect(bought(made)).toEqual(["1 x 8'"]);
        expect(made.stocks[0]!.boards[0]!.strips[0]!.rippedTo).toBeUndefined();
    });
});

describe('any job', () => {
    const sample: fc.Arbitrary<StockSample> = fc.record({
        name: fc.constantFrom('pine-1x6', 'oak-1x8', 'strip-1x2'),
        width: fc.integer({ min: 96, max: 720 }).map(n => n * 254),
        feet: fc.uniqueArray(fc.integer({ min: 3, max: 18 }), { maxLength: 6 }),
        perFoot: fc.option(fc.integer({ min: 0, max: 900 }).map(cents => `${cents}/100`), { nil: undefined }),
        each: fc.dictionary(fc.integer({ min: 3, max: 18 }).map(String), fc.integer({ min: 1, max: 9000 }).map(cents => `${cents}/100`), { maxKeys: 3 }),
        onHand: fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 1, max: 2000 }).map(n => n * 2032)), { maxLength: 3 }),
    });
    const settings = fc.record({
        kerf: fc.integer({ min: 0, max: 64 }), endTrim: fc.integer({ min: 0, max: 512 }), longest: fc.option(fc.integer({ min: 4, max: 18 })),
    }).map(({ kerf, endTrim, longest }) => job({
        kerf: given(kerf * 127), endTrim: given(endTrim * 127), ...(longest === null ? {} : { longestBoard: given(longest * TICKS_PER_FOOT) }),
    }));
    const cut = fc.record({
        stock: fc.nat(2), length: fc.integer({ min: 1, max: 30_000 }).map(n => n * 127), longer: fc.integer({ min: 0, max: 200 }).map(n => n * 127),
        width: fc.option(fc.integer({ min: 32, max: 760 }).map(n => n * 254)), miter: fc.constantFrom(0, 0, 22.5, 45),
    });

    test('is planned without a piece lost, a board overfilled or a price made up', () => {
        const some = fc.uniqueArray(sample, { minLength: 1, maxLength: 3, selector: s => s.name });
        fc.assert(fc.property(some, settings, fc.array(cut, { maxLength: 60 }), (samples, s, cuts) => {
            const stocks = samples.map(stock);
            const pieces = cuts.map((c, i) => {
                const of = stocks[c.stock % stocks.length]!;
                return piece(`p${i}`, of, c.length, {
                    cutBack: c.length + c.longer, ...(c.width === null ? {} : { width: c.width, ripped: true }),
                    ends: c.miter ? [{ cut: 'miter', degrees: c.miter }, { cut: 'square' }] : [{ cut: 'square' }, { cut: 'square' }],
                });
            });
            const made = plan(pieces, s);
            expect(planBoards([...pieces].reverse(), s), 'the order of the pieces does not matter').toEqual(made);
        }), { seed: 88, numRuns: runs(400) });
    });

    test('five thousand pieces are planned, and no more than one bought board is less than half used', () => {
        const pine = stock({ feet: [8, 10, 12, 14, 16], perFoot: '2' });
        const pieces = several(5000, id => piece(id, pine, inches(20) + (Number(id.slice(1)) * 7919 % 4000) * 127));
        const made = plan(pieces);
        const used = (b: (typeof made.stocks)[0]['boards'][0]): number => 1 - b.strips[0]!.offcut / b.length;
        expect(made.stocks[0]!.boards.filter(b => used(b) < 0.5).length).toBeLessThanOrEqual(1);
    });
});
