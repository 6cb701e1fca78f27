import type { JobSettings } from '../job/model.ts';
import type { Piece } from '../takeoff/model.ts';
import type { Board, Known, StockPlan, Strip } from './model.ts';
import { sumMoney } from './money.ts';
import { purchasesOf, type Offer } from './offers.ts';
import { SHORTEST_RIPPED, type Posed } from './pose.ts';
import { ripsOf } from './rips.ts';
import { spareOf } from './spare.ts';
import { lengthNeeded } from './solve/layouts.ts';
import { WHOLE, type Layout } from './solve/problem.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { blankLength } from './blank.ts';
import { compareTexts } from '../plain/order.ts';

/** A problem with its solution. */
export interface Solved { readonly posed: Posed; readonly layouts: readonly Layout[] }

/** Solutions of what is cut from one stock, one after the other, as boards with their pieces. */
export function stockPlanOf(parts: readonly Solved[], offers: readonly Offer[], job: JobSettings, known: Known): StockPlan {
    const { stock } = parts[0]!.posed, boards: Board[] = [];
    for (const { posed, layouts } of parts) {
        const queues = posed.pieces.map(pieces => [...pieces]);
        for (const layout of inOrder(posed, layouts))
            for (let n = 0; n < layout.times; n++) boards.push(boardOf(posed, layout, boards.length + 1, queues, job));
    }
    const bought = boards.filter(b => b.from === 'bought').map(b => b.length), spare = spareOf(stock, bought);
    const buy = purchasesOf([...bought, ...Array.from({ length: spare?.count ?? 0 }, () => spare!.length)], offers);
    return { stock, boards, buy, ...spare && { spare }, costs: sumMoney(buy.flatMap(p => p.cost ?? [])), rips: ripsOf(boards, stock, job), known };
}

/** Boards on hand first, the shortest first; then those to buy, the longest first; of one length those ripped alike and the best used first. */
function inOrder({ kinds, problem }: Posed, layouts: readonly Layout[]): Layout[] {
    const rank = ({ board }: Layout): number => (kinds.all[board]!.from === 'on hand' ? kinds.all[board]!.length : 2 ** 50 - kinds.all[board]!.length);
    const ripped = ({ strips }: Layout): string => strips.map(s => s.lane).sort((a, b) => a - b).join(' ');
    return [...layouts].sort((a, b) =>
        rank(a) - rank(b) || a.board - b.board || compareTexts(ripped(a), ripped(b)) || lengthNeeded(problem, b) - lengthNeeded(problem, a)
        || b.times - a.times || compareTexts(JSON.stringify([a.sections, a.strips]), JSON.stringify([b.sections, b.strips])));
}

function boardOf(posed: Posed, layout: Layout, number: number, queues: Piece[][], job: JobSettings): Board {
    const { from, length, worth, crosswise, measured, width } = posed.kinds.all[layout.board]!;
    const { cut, endTrim } = posed.saw;
    const usable = (crosswise ? posed.stock.width!.value.ticks : length) - endTrim;
    const filled = [...layout.strips].sort((a, b) => (a.section ?? -1) - (b.section ?? -1) || a.lane - b.lane).map(strip => {
        const pieces = [...strip.picks].sort(([a], [b]) => a - b).flatMap(([item, count]) => queues[item]!.splice(0, count));
        return { ...strip, pieces, used: pieces.reduce((sum, piece) => sum + blankLength(piece, job) + cut, 0) };
    });
    const mayCutAcross = posed.problem.shortestSection !== undefined && !(width !== undefined && filled.every(({ lane }) => posed.widths[lane] === width));
    const sections = layout.sections?.map(size => size * posed.lengthUnit - cut) ?? (mayCutAcross ? cutAcrossFirst(filled, usable, cut, job) : undefined);
    const behind = usable - (sections ?? []).reduce((sum, each) => sum + each + cut, 0);
    const strips = filled.map(({ lane, section = lane === WHOLE ? undefined : sections && 0, pieces, used }): Strip => ({
        ...widthOf(posed, lane), ...section !== undefined && { section: section + 1 }, pieces,
        ...offcutOf((section !== undefined ? sections![section]! : lane === WHOLE ? behind : usable) - used, job),
    }));
    // what is left behind the sections of a board that nothing else is cut from
    const whole = sections && strips.every(strip => strip.rippedTo !== undefined) ? [{ pieces: [], ...offcutOf(behind, job) }] : [];
    const found = { ...measured !== undefined && { measured }, ...width !== undefined && { width } };
    return { number, length, from, ...worth && { worth }, ...found, strips: [...whole, ...strips], ...sections && { sections }, ...crosswise && { crosswise } };
}

/** Where all that would be left behind the strips of a ripped board is worth keeping, only a section is ripped: the rest keeps its width. */
function cutAcrossFirst(strips: readonly { readonly lane: number; readonly used: Ticks }[], usable: Ticks, cut: Ticks, job: JobSettings): Ticks[] | undefined {
    if (strips.some(({ lane }) => lane === WHOLE)) return undefined;
    const section = Math.max(SHORTEST_RIPPED, ...strips.map(({ used }) => used - cut));
    return usable - section - cut >= Math.max(1, job.shortestOffcut.value) ? [section] : undefined;
}

function widthOf({ widths }: Posed, lane: number): { rippedTo?: Ticks } {
    const rippedTo = widths[lane];
    return rippedTo === undefined ? {} : { rippedTo };
}

function offcutOf(left: Ticks, job: JobSettings): { offcut: Ticks; kept: boolean } {
    const offcut = Math.max(0, left);
    return { offcut, kept: offcut >= job.shortestOffcut.value };
}
