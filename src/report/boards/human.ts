import type { Board, Money, StockPlan, Strip } from '../../cutting/model.ts';
import { printMoney } from '../../quantity/money.ts';
import { printLength, type Show } from '../../quantity/print-length.ts';
import { roundDown } from '../../quantity/round.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { titleOf, type HousePlan } from '../house.ts';
import { cleanLine, columns, counted, wrap, type Paint } from '../look.ts';

const WIDTH = 100;

/** What to buy, what it costs, and what to cut from each board. */
export function humanBoards(plans: readonly HousePlan[], paint: Paint): string {
    return plans.map(plan => `${boards(plan, paint).join('\n')}\n`).join('\n');
}

function boards({ house, plan }: HousePlan, paint: Paint): string[] {
    const { job, rooms } = house;
    const show = job.show.value;
    const length = (ticks: number): string => printLength(ticks, show);
    return [
        paint.strong(`BOARDS TO BUY  ${cleanLine(titleOf(job))}`),
        `For ${rooms.map(r => r.room.name).join(', ')}. A first plan: it can be cut as it stands, and a cheaper one may exist.`,
        ...rooms.filter(r => r.errors > 0).map(r => paint.error(`room ${r.room.name}: ${counted(r.errors, 'error')} in its file. Do not order before they are mended.`)),
        ...rooms.filter(r => !r.takeOff).map(r => paint.error(`room ${r.room.name}: cannot be laid out, so its boards are not here.`)),
        ...columns(plan.stocks.flatMap(stock => shoppingRows(stock, show)), [1, 2, 4]).map(line => `  ${line}`),
        paint.strong(`  ${plan.costs.length === 0 ? 'total' : `total ${plan.costs.map(money).join(' + ')}`}${plan.unpriced.length > 0 ? ', without the boards that have no price' : plan.costs.length === 0 ? ' nothing to buy' : ''}`),
        ...plan.unpriced.flatMap(u => wrap(`no price for ${u.stock.name}: ${u.count} x ${length(u.length)} not in the total`, WIDTH - 2)).map(l => paint.warning(`  ${l}`)),
        ...plan.unplaced.flatMap(u => wrap(`no board for ${u.piece.id} (${u.piece.part}, ${u.piece.room}): ${u.reason}`, WIDTH - 2)).map(l => paint.error(`  ${l}`)),
        '',
        paint.strong('HOW TO CUT THEM'),
        `kerf ${length(job.kerf.value)}, end trim ${length(job.endTrim.value)} a board; lengths between the long points; offcuts after kerf and trim`,
        ...plan.stocks.flatMap(stock => ['', paint.strong(stock.stock.name), ...stock.boards.flatMap(board => cuts(board, job.cutTo.value, show, paint))]),
    ];
}

function shoppingRows({ stock, boards: all, buy }: StockPlan, show: Show): string[][] {
    const onHand = new Map<number, number>();
    for (const board of all) if (board.onHand) onHand.set(board.length, (onHand.get(board.length) ?? 0) + 1);
    const rows = [
        ...[...onHand].map(([length, count]) => [String(count), printLength(length, show), 'on hand', '']),
        ...buy.map(p => [String(p.count), printLength(p.length, show), p.each ? `at ${money(p.each)}` : 'no price', p.cost ? money(p.cost) : '']),
    ];
    return rows.map(([count, ...rest], i) => [i === 0 ? stock.name : '', `${count} x`, ...rest]);
}

function cuts(board: Board, step: Ticks, show: Show, paint: Paint): string[] {
    const ripped = board.strips.length > 1 ? `, ripped into ${board.strips.length} strips of ${printLength(board.strips[0]!.rippedTo!, show)}` : '';
    const used = board.strips.filter(strip => strip.pieces.length > 0);
    const whole = board.strips.length - used.length;
    const lines = [
        ...used.flatMap((strip, i) => wrap(`${ripped ? `strip ${i + 1}: ` : ''}${stripText(strip, step, show)}`, WIDTH - 7)),
        ...(whole > 0 ? [`${counted(whole, 'strip')} left whole`] : []),
    ];
    return [
        `  ${`#${board.number}`.padEnd(5)}${printLength(board.length, show)}${board.onHand ? ' on hand' : ''}${ripped}`,
        ...lines.map(line => paint.faint(`       ${line}`)),
    ];
}

/** The pieces in the order they are cut off, and what is left, rounded down so that it is never promised too long. */
function stripText({ pieces, offcut }: Strip, step: Ticks, show: Show): string {
    const left = roundDown(offcut, step);
    return [
        ...pieces.map(p => `${printLength(Math.max(p.cutFace, p.cutBack), show)} ${p.id}`),
        ...(left > 0 ? [`offcut ${printLength(left, show)}`] : []),
    ].join(' | ');
}

function money({ amount, currency }: Money): string {
    return printMoney(amount, currency);
}
