import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { planBoards } from '../../src/cutting/first-plan.ts';
import type { Stock } from '../../src/job/model.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT } from '../../src/quantity/ticks.ts';
import type { HousePlan } from '../../src/report/house.ts';
import { noPaint } from '../../src/report/look.ts';
import { csvOrder } from '../../src/report/order/csv.ts';
import { humanOrder } from '../../src/report/order/human.ts';
import { jsonOrder } from '../../src/report/order/json.ts';
import { feetText, ordersOf } from '../../src/report/order/lines.ts';
import { given, job, piece, stock } from '../cutting/samples.ts';
import { checksOf } from '../data/published.ts';
import { files, house, strictSchema } from './samples.ts';

const nominal = (of: Stock, thickness: number, width: number): Stock => ({ ...of, size: given({ text: `${thickness}x${width}`, thickness: new Rational(thickness), width: new Rational(width) }) });
const pine: Stock = {
    ...nominal(stock({ name: 'pine-1x6', feet: [8, 12], perFoot: '2.10' }), 1, 6), species: given('eastern-white-pine'),
    supplier: given('Tern & Daughters'), leadDays: given(3), comes: given('primed' as const),
};
const fir: Stock = { ...nominal(stock({ name: 'fir-1x8', width: inches('7 1/4'), feet: [16] }), 1, 8), supplier: given('Tern & Daughters'), leadDays: given(10) };
const sheet = { width: inches(48), length: inches(96), grain: 'lengthwise' as const };
const ply: Stock = {
    ...stock({ name: 'ply', width: inches(48), feet: [8], each: { 8: '58' } }), sheet: given(sheet), supplier: given('Alder Street Panels'),
};
const loose = stock({ name: 'loose', feet: [8], perFoot: '1' });

const planned = (title: string, stocks: readonly Stock[], count: number): HousePlan => {
    const settings = job({ title: given(title) });
    const pieces = stocks.flatMap(of => Array.from({ length: count }, (_, i) => piece(`den.${of.name}-${i}`, of, inches(90), of === ply ? { width: inches(5), ripped: true } : {})));
    return { house: { ...house, job: settings, rooms: [] }, plan: planBoards(pieces, settings) };
};
const plans = [planned('Plum Street 4', [pine, fir, ply, loose], 3), planned('Quay 9', [pine], 2)];
const titles = ({ house: { job: { title } } }: HousePlan): string => title!.value;

describe('an order', () => {
    test('each supplier in turn, what two houses buy on one line, what nobody is said to sell at the end', () => {
        const orders = ordersOf(plans, titles);
        expect(orders.map(({ supplier, lines }) => [supplier, lines.map(line => [line.stock.name, line.count, line.length / TICKS_PER_FOOT, line.houses])]))
            .toEqual([
            ['Alder Street Panels', [['ply', 1, 8, ['Plum Street 4']]]],
            ['Tern & Daughters', [['fir-1x8', 2, 16, ['Plum Street 4']], ['pine-1x6', 5, 8, ['Plum Street 4', 'Quay 9']]]],
            [undefined, [['loose', 3, 8, ['Plum Street 4']]]],
        ]);
    });

    test('sums by supplier: money of what has a price, board feet of what has a nominal size, the longest lead', () => {
        expect(ordersOf(plans, titles).map(({ costs, boardFeet, leadDays }) => [costs.map(c => c.amount.toFraction()), boardFeet?.toFraction(), leadDays]))
            .toEqual([
            [['58'], undefined, undefined],
            // 2 x 1" x 8" x 16' / 12 + 5 x 1" x 6" x 8' / 12
            [['84'], new Rational(128 + 120, 6).toFraction(), 10],
            [['24'], undefined, undefined],
        ]);
    });

    test.each(checksOf('board-measure', /^bf\./))('%s: board feet of one board (%s)', (_id, _source, { inputs, expected }) => {
        const { T, W, L } = inputs as { T: number; W: number; L: number };
        const board: Stock = { ...stock({ name: 'board', width: inches(W), thickness: inches(T), feet: [L], perFoot: '1' }), size: given({ text: `${T}x${W}`, thickness: new Rational(T), width: new Rational(W) }) };
        const settings = job({ endTrim: given(0) });
        const [order] = ordersOf([{ house, plan: planBoards([piece('den.a', board, inches(11))], settings) }], () => 'x');
        expect([order!.lines[0]!.count, feetText(order!.lines[0]!.boardFeet!)]).toEqual([1, String(expected)]);
    });

    test('for people', () => {
        expect(humanOrder(plans, noPaint)).toMatchSnapshot();
        expect(humanOrder([planned('Empty', [], 0)], noPaint)).toContain('nothing to buy');
    });

    test('as JSON, as its published schema says', () => {
        const valid = strictSchema('order');
        const printed = JSON.parse(jsonOrder(
            plans, files,
        )) as { orders: { supplier: string | null; complete: boolean; boardFeet: object | null; lines: object[] }[] };
        expect(valid(printed), JSON.stringify(valid.errors)).toBe(true);
        expect(printed.orders.map(({ supplier, complete }) => [supplier, complete])).toEqual([['Alder Street Panels', true], ['Tern & Daughters', false], [null, true]]);
        expect(printed.orders[1]).toMatchObject({ leadDays: 10, boardFeet: { amount: '41.33', exact: '124/3' }, lines: [{ each: null }, { comes: 'primed', species: 'eastern-white-pine', boardFeet: { amount: '20' }, cost: { amount: '84.00' } }] });
        expect(printed.orders[0]!.lines).toMatchObject([{ sheet: { width: { text: "4'" }, length: { text: "8'" } }, boardFeet: null }]);
    });

    test('as CSV: a row for every line', () => {
        const { data, errors } = Papa.parse<Record<string, string>>(csvOrder(plans), { header: true, skipEmptyLines: true });
        expect(errors).toEqual([]);
        expect(data.map(row => [row.supplier, row.stock, row.count, row.length, row.board_feet, row.cost, row.lead_days, row.houses])).toEqual([
            ['Alder Street Panels', 'ply', '1', '96', '', '58.00', '', 'Plum Street 4'],
            ['Tern & Daughters', 'fir-1x8', '2', '192', '21.33', '', '10', 'Plum Street 4'],
            ['Tern & Daughters', 'pine-1x6', '5', '96', '20', '84.00', '3', 'Plum Street 4; Quay 9'],
            ['', 'loose', '3', '96', '', '24.00', '', 'Plum Street 4'],
        ]);
    });
});
