import { describe, expect, test } from 'vitest';
import { gapOf } from '../../src/cutting/gap.ts';
import { knownBy, knownText, weakest } from '../../src/cutting/known.ts';
import type { BoardPlan, CuttingModel } from '../../src/cutting/model.ts';
import type { Answer, Asked } from '../../src/cutting/questions.ts';
import { Rational } from '../../src/quantity/rational.ts';

describe('what is known of all stocks together is the weakest of what is known of each', () => {
    /** By cost and lower bound of each stock. */
    const together = (...stocks: [cost: number, bound: number, model?: CuttingModel][]) => weakest({
        stocks: stocks.map(([cost, bound, model]) => ({ known: knownBy(new Rational(cost), new Rational(bound), 'money', model) })),
    } as unknown as BoardPlan);

    test.each<[string, [number, number][], string, number | undefined]>([
        // 103 is 3 % above 100, 101 is 1 %
        ['of two that may be dearer, the one by more', [[101, 100], [103, 100]], 'within', 3],
        ['whichever comes first', [[103, 100], [101, 100]], 'within', 3],
        ['one that may be dearer, of one that is not', [[100, 100], [101, 100], [50, 50]], 'within', 1],
        ['one of which nothing is known, of any', [[103, 100], [100, 0], [101, 100]], 'first plan', undefined],
        ['none is dearer than it has to be', [[100, 100], [7, 7]], 'none cheaper', 0],
        ['nothing to buy', [], 'none cheaper', 0],
    ])('%s', (_, stocks, as, percent) => {
        const known = together(...stocks);
        expect([known.as, known.percent]).toEqual([as, percent]);
    });
    test('it was looked at among the ways of the stock that has most of them, and of a first plan among none', () => {
        expect(together([100, 100, 'across'], [103, 100, 'ripped'])).toMatchObject({ model: 'ripped' });
        expect(together([103, 100, 'sheets along'], [100, 100, 'across'])).toMatchObject({ model: 'sheets along' });
        expect('model' in together([100, 0, 'ripped'], [100, 100, 'across'])).toBe(false);
    });
});

// by hand: what costs `part` more than 1 is 100 × part % above it, told in two figures and never as less than it is
test.each<[gap: string, percent: number, text: string]>([
    ['12345/1000', 1300, '1300 %'], ['1', 100, '100 %'], ['3712/1000000', 0.38, '0.38 %'], ['38/10000', 0.38, '0.38 %'],
    ['38000000000001/10000000000000000', 0.39, '0.39 %'], ['995/100000', 1, '1 %'], ['12/10000000', 0.00012, '0.00012 %'],
    ['12/1000000000', 0.0000012, '0.0000012 %'], ['1/100000000', 0.000001, '0.000001 %'], ['1/1000000000000000', 0.000001, '0.000001 %'],
    [`1/1${'0'.repeat(400)}`, 0.000001, '0.000001 %'],
])('a plan that costs %s more than what none can cost less than', (gap, percent, text) => {
    const known = knownBy(new Rational(1).add(new Rational(gap)), new Rational(1), 'money');
    expect([known.as, known.percent]).toEqual(['within', percent]);
    expect(knownText(known)).toBe(`at most ${text} above the cheapest possible`);
});
test('what it was looked at under is told with it, and of all stocks together what any of them was', () => {
    const three = knownBy(new Rational(103), new Rational(100), 'money', 'across', ['rooms apart']);
    expect(knownText(three)).toBe('at most 3 % above the cheapest possible (ways of cutting compared: cut across; no piece turned; no board for two rooms, boards on hand given out beforehand)');
    const none = knownBy(new Rational(1), new Rational(1), 'money', 'ripped', ['offcuts worth']), plain = knownBy(new Rational(1), new Rational(1), 'money', 'across');
    const of = (...all: (typeof three)[]): unknown => weakest({ stocks: all.map(known => ({ known })) } as unknown as BoardPlan);
    expect(of(none, three)).toEqual({ ...three, model: 'ripped', under: ['rooms apart', 'offcuts worth'] });
    expect(of(plain, plain)).toEqual({ as: 'none cheaper', least: 'money', percent: 0, model: 'across' });
    expect([three, plain].map(known => 'under' in known)).toEqual([true, false]);
});
test('and one that costs no more is told without a percent', () => {
    expect(knownText(knownBy(new Rational(1), new Rational(1), 'length'))).toBe('none shorter exists');
});

// 1125 over 1000 is 12.5 % above it; 10625 over 10000 is 6.25 %, told as 6.3
test.each<[number, number, number | undefined]>([
    [1125, 1000, 12.5], [10_625, 10_000, 6.3], [3, 2, 50], [1000, 1000, undefined], [1000, 1001, undefined], [1000, 0, undefined],
    [10_000_000_000_001, 10_000_000_000_000, 0.1],
])
('a plan of %i while none is known below %i', (cost, bound, percent) => {
    const asked = { problem: { items: [], strips: [], boards: [{ capacity: 1, cost, available: null, across: 0 }] }, layouts: [] } as Asked;
    const answer: Answer = { layouts: [{ board: 0, times: 1, strips: [] }], bound };
    expect(gapOf(asked, answer)).toBe(percent);
});
