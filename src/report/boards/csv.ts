import { knownText } from '../../cutting/known.ts';
import type { Sum } from '../../job/rates.ts';
import type { Board } from '../../cutting/model.ts';
import { leftoversOf, type Left } from '../../cutting/leftovers.ts';
import { printAmount } from '../../quantity/money.ts';
import { printLength, type Show } from '../../quantity/print-length.ts';
import { decimal, unitOf } from '../csv.ts';
import { rowOf, type Cell } from '../../text/csv.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { titleOf, type HousePlan } from '../house.ts';
import { csvStanding, standingOfRooms } from '../standing.ts';
import { lengthKnownOf, sizeText, there } from './there.ts';
import { stockNames } from '../../job/stock-names.ts';
import type { CsvText } from '../../text/fit.ts';

const HEADER = ['job', 'stock', 'from', 'count', 'length', 'unit', 'length_text', 'each', 'cost', 'currency', 'note', 'known', 'length_known', 'on', 'by'] as const;
type Row = Readonly<Partial<Record<(typeof HEADER)[number], Cell>>>;

/**
 * The boards: a row for every length of every stock, one for every piece that no board holds, and what is left in the end. Boards on hand say how their length
 * is known, each that was measured by its name.
 */
export function csvBoards(plans: readonly HousePlan[]): CsvText {
    const cells = (rows: readonly Row[]): Cell[][] => rows.map(row => rowOf(HEADER, row));
    return csvStanding(HEADER, [
        ...plans.map(plan => ({ rows: cells(rowsOf(plan)), standing: standingOfRooms(plan.house.rooms) })),
        ...leftRows(plans).map(row => ({ rows: cells([row]), standing: standingOfRooms(plans.flatMap(({ house }) => house.rooms)) })),
    ]);
}

function rowsOf({ house, plan }: HousePlan): Row[] {
    const show = house.job.show.value;
    const job = titleOf(house.job), nameOf = stockNames(plan.stocks.map(({ stock }) => stock));
    return [
        ...plan.stocks.flatMap(({ stock, boards, buy, spare, known }): Row[] => {
            const sheet = (length: Ticks): string[] => (stock.sheet?.value.length === length ? [sizeText(stock, { length }, show)] : []);
            const note = (length: Ticks, ...others: string[]): string => [...sheet(length), ...others].join('; ');
            const knownOfBoard = (board: Board): Row => {
                const is = lengthKnownOf(board, stock, house);
                return is ? { length_known: is.known, ...is.on && { on: is.on }, ...is.by && { by: is.by } } : {};
            };
            const own = { job, stock: nameOf(stock), known: knownText(known) };
            return [
                ...there(boards, board => `${board.measured ?? ''} ${JSON.stringify(knownOfBoard(board))}`).map(({ from, count, length, width, worth, first }): Row => ({
                    ...own, ...knownOfBoard(first), from, count, ...size(length, show), ...eachOf(worth),
                    note: note(length, ...first.measured === undefined ? [] : [`board ${first.measured}`], ...width === undefined ? [] : [`${printLength(width, show)} wide`], ...worth ? ['worth that each'] : []),
                })),
                ...buy.map(({ count, length, each, cost }): Row => ({
                    ...own, from: 'buy', count, ...size(length, show), ...eachOf(each), cost: cost ? printAmount(cost.amount) : null,
                    note: note(
                        length, ...each ? [] : ['no price said'],
                        ...spare?.length === length ? [`${spare.count} of them for defects and breakage`] : [],
                    ),
                })),
            ];
        }),
        ...plan.unplaced.map(({ piece, reason }): Row => ({
            job, stock: piece.stock.name, from: 'no board', count: 1, ...size(piece.cutOverall, show), note: `${piece.id}: ${reason}`,
        })),
    ];
}

/** What is left belongs to the shop, not to one job. */
function leftRows(plans: readonly HousePlan[]): Row[] {
    const row = (stock: string, show: Show, { count, length, worth }: Left, note: string): Row =>
        ({ stock, from: 'left', count, ...size(length, show), ...eachOf(worth), note });
    return leftoversOf(plans.map(({ plan, house: { job } }) => ({ plan, job }))).flatMap(({ stock, show, pieces, strips }) => [
        ...pieces.map(left => row(stock.name, show, left, '')),
        ...strips.map(strip => row(stock.name, show, strip, `a strip ${printLength(strip.width, show)} wide`)),
    ]);
}

function size(length: Ticks, show: Show): Row {
    return { length: decimal(length, show), unit: unitOf(show), length_text: printLength(length, show) };
}

function eachOf(sum: Sum | undefined): Row {
    return sum ? { each: printAmount(sum.amount), currency: sum.currency } : {};
}
