import type { JobSettings } from '../job/model.ts';
import type { Piece } from '../takeoff/model.ts';
import type { Board, Known, StockPlan, Strip } from './model.ts';
import { sumMoney } from './money.ts';
import { purchasesOf, type Offer } from './offers.ts';
import type { Posed } from './pose.ts';
import { ripsOf } from './rips.ts';
import { spareOf } from './spare.ts';
import { lengthNeeded } from './solve/layouts.ts';
import type { Layout, StripCut } from './solve/problem.ts';
import { longPoints } from '../takeoff/long-points.ts';

/** A solution of the problem as boards with their pieces. */
export function stockPlanOf(posed: Posed, layouts: readonly Layout[], offers: readonly Offer[], job: JobSettings, known: Known): StockPlan {
    const queues = posed.pieces.map(pieces => [...pieces]);
    const boards = inOrder(posed, layouts).flatMap(layout => Array.from({ length: layout.times }, () => layout))
        .map((layout, i) => boardOf(posed, layout, i + 1, queues, job));
    const bought = boards.filter(b => b.from === 'bought').map(b => b.length), spare = spareOf(posed.stock, bought);
    const buy = purchasesOf([...bought, ...Array.from({ length: spare?.count ?? 0 }, () => spare!.length)], offers);
    return { stock: posed.stock, boards, buy, ...spare && { spare }, costs: sumMoney(buy.flatMap(p => p.cost ?? [])), rips: ripsOf(boards, posed.stock, job), known };
}

/** Boards on hand first, the shortest first; then those to buy, the longest first; of one length those ripped alike and the best used first. */
function inOrder({ kinds, problem }: Posed, layouts: readonly Layout[]): Layout[] {
    const rank = ({ board }: Layout): number => (kinds.all[board]!.from === 'on hand' ? kinds.all[board]!.length : 2 ** 50 - kinds.all[board]!.length);
    const ripped = ({ strips }: Layout): string => strips.map(s => s.lane).sort((a, b) => a - b).join(' ');
    return [...layouts].sort((a, b) =>
        rank(a) - rank(b) || a.board - b.board || compareText(ripped(a), ripped(b)) || lengthNeeded(problem, b) - lengthNeeded(problem, a)
        || b.times - a.times || compareText(JSON.stringify(a.strips), JSON.stringify(b.strips)));
}

function compareText(a: string, b: string): number {
    return a < b ? -1 : a > b ? 1 : 0;
}

function boardOf(posed: Posed, layout: Layout, number: number, queues: Piece[][], job: JobSettings): Board {
    const { from, length, worth, crosswise } = posed.kinds.all[layout.board]!;
    const along = crosswise ? posed.stock.width!.value.ticks : length;
    const strips = [...layout.strips].sort((a, b) => a.lane - b.lane).map(strip => stripOf(posed, strip, along, queues, job));
    return { number, length, from, ...(worth ? { worth } : {}), cut: posed.saw.cut, strips, ...(crosswise ? { crosswise } : {}) };
}

function stripOf({ saw, widths }: Posed, { lane, picks }: StripCut, along: number, queues: Piece[][], job: JobSettings): Strip {
    const pieces = [...picks].sort(([a], [b]) => a - b).flatMap(([item, count]) => queues[item]!.splice(0, count));
    const used = pieces.reduce((sum, piece) => sum + longPoints(piece) + saw.cut, saw.endTrim);
    const offcut = Math.max(0, along - used);
    const rippedTo = widths[lane];
    return { ...(rippedTo === undefined ? {} : { rippedTo }), pieces, offcut, kept: offcut >= job.shortestOffcut.value };
}
