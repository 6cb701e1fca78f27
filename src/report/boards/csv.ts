import { printAmount } from '../../quantity/money.ts';
import { printLength } from '../../quantity/print-length.ts';
import { decimal, printCsv, unitOf, type Cell } from '../csv.ts';
import { titleOf, type HousePlan } from '../house.ts';

const HEADER = ['job', 'stock', 'from', 'count', 'length', 'unit', 'length_text', 'each', 'cost', 'currency', 'note'];

/** The order for the yard: a row for every length of every stock, and one for every piece that no board holds. */
export function csvBoards(plans: readonly HousePlan[]): string {
    return printCsv(HEADER, plans.flatMap(rowsOf));
}

function rowsOf({ house, plan }: HousePlan): Cell[][] {
    const show = house.job.show.value;
    const job = titleOf(house.job);
    const size = (ticks: number): Cell[] => [decimal(ticks, show), unitOf(show), printLength(ticks, show)];
    return [
        ...plan.stocks.flatMap(({ stock, boards, buy }): Cell[][] => {
            const onHand = boards.filter(b => b.from === 'on hand').map(b => b.length);
            return [
                ...[...new Set(onHand)].map((length): Cell[] =>
                    [job, stock.name, 'on hand', onHand.filter(l => l === length).length, ...size(length), null, null, null, '']),
                ...buy.map((p): Cell[] => [
                    job, stock.name, 'buy', p.count, ...size(p.length), p.each ? printAmount(p.each.amount, p.each.currency) : null,
                    p.cost ? printAmount(p.cost.amount, p.cost.currency) : null, p.each?.currency ?? null, p.each ? '' : 'no price said',
                ]),
            ];
        }),
        ...plan.unplaced.map((u): Cell[] =>
            [job, u.piece.stock.name, 'no board', 1, ...size(Math.max(u.piece.cutFace, u.piece.cutBack)), null, null, null, `${u.piece.id}: ${u.reason}`]),
    ];
}
