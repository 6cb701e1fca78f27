import { printAmount } from '../../quantity/money.ts';
import { printLength } from '../../quantity/print-length.ts';
import { decimal, unitOf } from '../csv.ts';
import type { Cell } from '../../text/csv.ts';
import { titleOf, type HousePlan } from '../house.ts';
import { csvStanding, standingOfRooms } from '../standing.ts';
import { feetText, ordersOf } from './lines.ts';
import { stockNames } from '../../job/stock-names.ts';
import type { CsvText } from '../../text/fit.ts';

const HEADER = ['supplier', 'stock', 'size', 'species', 'comes', 'count', 'length', 'unit', 'length_text', 'sheet_width', 'board_feet', 'each', 'cost', 'currency', 'lead_days', 'houses', 'spare'];

/** A row for every length of every stock that is bought. */
export function csvOrder(plans: readonly HousePlan[]): CsvText {
    const nameOf = stockNames(plans.flatMap(({ plan }) => plan.stocks.map(({ stock }) => stock)));
    const rows = ordersOf(plans, ({ house }) => titleOf(house.job)).flatMap(({ lines }) => lines.map(({ stock, length, count, spare, each, cost, boardFeet, houses, show }): Cell[] => [
        stock.supplier?.value ?? null, nameOf(stock), stock.size?.value.text ?? null, stock.species?.value ?? null, stock.comes?.value ?? null,
        count, decimal(length, show), unitOf(show), printLength(length, show), stock.sheet ? decimal(stock.sheet.value.width, show) : null,
        boardFeet ? feetText(boardFeet) : null, each ? printAmount(each.amount, each.currency) : null, cost ? printAmount(cost.amount, cost.currency) : null, each?.currency ?? null,
        stock.leadDays?.value ?? null, houses.join('; '), spare,
    ]));
    return csvStanding(HEADER, [{ rows, standing: standingOfRooms(plans.flatMap(({ house }) => house.rooms)) }]);
}
