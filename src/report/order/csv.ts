import { printAmount } from '../../quantity/money.ts';
import { printLength } from '../../quantity/print-length.ts';
import { decimal, unitOf } from '../csv.ts';
import { rowOf } from '../../text/csv.ts';
import { titleOf, type HousePlan } from '../house.ts';
import { csvStanding, standingOfRooms } from '../standing.ts';
import { feetText, ordersOf } from './lines.ts';
import { stockNames } from '../../job/stock-names.ts';
import type { CsvText } from '../../text/fit.ts';

const HEADER = [
    'supplier', 'stock', 'size', 'species', 'comes', 'count', 'length', 'unit', 'length_text', 'sheet_width', 'board_feet', 'each', 'cost', 'currency',
    'lead_days', 'houses', 'spare',
] as const;

/** A row for every length of every stock that is bought. */
export function csvOrder(plans: readonly HousePlan[]): CsvText {
    const nameOf = stockNames(plans.flatMap(({ plan }) => plan.stocks.map(({ stock }) => stock)));
    const lines = ordersOf(plans, ({ house }) => titleOf(house.job)).flatMap(order => order.lines);
    const rows = lines.map(({ stock, length, count, spare, each, cost, boardFeet, houses, show }) => rowOf(HEADER, {
        supplier: stock.supplier?.value, stock: nameOf(stock), size: stock.size?.value.text, species: stock.species?.value, comes: stock.comes?.value,
        count, length: decimal(length, show), unit: unitOf(show), length_text: printLength(length, show),
        sheet_width: stock.sheet && decimal(stock.sheet.value.width, show), board_feet: boardFeet && feetText(boardFeet),
        each: each && printAmount(each.amount), cost: cost && printAmount(cost.amount), currency: each?.currency,
        lead_days: stock.leadDays?.value, houses: houses.join('; '), spare,
    }));
    return csvStanding(HEADER, [{ rows, standing: standingOfRooms(plans.flatMap(({ house }) => house.rooms)) }]);
}
