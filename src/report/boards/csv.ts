import { knownText } from '../../cutting/known.ts';
import { leftoversOf, type Left } from '../../cutting/leftovers.ts';
import { printAmount } from '../../quantity/money.ts';
import { printLength, type Show } from '../../quantity/print-length.ts';
import { decimal, unitOf, type Cell } from '../csv.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { titleOf, type HousePlan } from '../house.ts';
import { csvStanding, standingOfRooms } from '../standing.ts';
import { sizeText, there } from './there.ts';
import { stockNames } from '../../job/stock-names.ts';

const HEADER = ['job', 'stock', 'from', 'count', 'length', 'unit', 'length_text', 'each', 'cost', 'currency', 'note', 'known'];

/** The boards: a row for every length of every stock, one for every piece that no board holds, and what is left in the end. */
export function csvBoards(plans: readonly HousePlan[]): string {
    return csvStanding(HEADER, [
        ...plans.map(plan => ({ rows: rowsOf(plan), standing: standingOfRooms(plan.house.rooms) })),
        ...leftRows(plans).map(row => ({ rows: [row], standing: standingOfRooms(plans.flatMap(({ house }) => house.rooms)) })),
    ]);
}

function rowsOf({ house, plan }: HousePlan): Cell[][] {
    const show = house.job.show.value;
    const job = titleOf(house.job), nameOf = stockNames(plan.stocks.map(({ stock }) => stock));
    const size = (ticks: number): Cell[] => [decimal(ticks, show), unitOf(show), printLength(ticks, show)];
    return [
        ...plan.stocks.flatMap(({ stock, boards, buy, known }): Cell[][] => {
            const sheet = (length: Ticks): string[] => (stock.sheet?.value.length === length ? [sizeText(stock, length, show)] : []);
            const note = (length: Ticks, ...others: string[]): string => [...sheet(length), ...others].join('; ');
            return [
                ...there(boards).map((b): Cell[] => [
                    job, nameOf(stock), b.from, b.count, ...size(b.length), b.worth ? printAmount(b.worth.amount, b.worth.currency) : null, null, b.worth?.currency ?? null,
                    note(b.length, ...b.worth ? ['worth that each'] : []), knownText(known),
                ]),
                ...buy.map((p): Cell[] => [
                    job, nameOf(stock), 'buy', p.count, ...size(p.length), p.each ? printAmount(p.each.amount, p.each.currency) : null,
                    p.cost ? printAmount(p.cost.amount, p.cost.currency) : null, p.each?.currency ?? null, note(p.length, ...p.each ? [] : ['no price said']), knownText(known),
                ]),
            ];
        }),
        ...plan.unplaced.map((u): Cell[] =>
            [job, u.piece.stock.name, 'no board', 1, ...size(Math.max(u.piece.cutFace, u.piece.cutBack)), null, null, null, `${u.piece.id}: ${u.reason}`, null]),
    ];
}

/** What is left belongs to the shop, not to one job. */
function leftRows(plans: readonly HousePlan[]): Cell[][] {
    const row = (stock: string, show: Show, { count, length, worth }: Left, note: string): Cell[] =>
        [null, stock, 'left', count, decimal(length, show), unitOf(show), printLength(length, show), worth ? printAmount(worth.amount, worth.currency) : null, null, worth?.currency ?? null, note, null];
    return leftoversOf(plans.map(({ plan, house: { job } }) => ({ plan, job }))).flatMap(({ stock, show, pieces, strips }) => [
        ...pieces.map(left => row(stock.name, show, left, '')), ...strips.map(strip => row(stock.name, show, strip, `a strip ${printLength(strip.width, show)} wide`)),
    ]);
}
