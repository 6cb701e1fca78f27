import type { JobSettings, Stock } from '../job/model.ts';
import { onHandKey } from '../job/on-hand.ts';
import { inches, type Rational } from '../quantity/rational.ts';
import type { Show } from '../quantity/print-length.ts';
import { roundDown } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { worthOfOffcut } from './kinds.ts';
import type { Board, BoardPlan, Money } from './model.ts';
import { grouped } from '../plain/groups.ts';
import { onEdgeTo, rippedParts } from './rips.ts';

/** What is there of a stock when everything is cut: boards that were not needed, and offcuts worth keeping. */
interface Leftovers {
    readonly stock: Stock;
    /** How its lengths are shown: as in the first house that is built of it. */
    readonly show: Show;
    /** In the full width of the stock, the longest first. */
    readonly pieces: readonly Left[];
    /** Strips of boards that were ripped, the widest first. */
    readonly strips: readonly LeftStrip[];
}
/** `isThin`: it was ripped on edge too, so that it is no strip of its stock any more. */
interface LeftStrip extends Left { readonly width: Ticks; readonly isThin?: true }
export interface Left { readonly count: number; readonly length: Ticks; readonly worth?: Money }

/**
 * Of every stock that is cut from, over all plans made of it, one after the other. Offcuts are never promised too long: rounded
 * down to a step of the tape, and their trimmed ends not counted. They are worth the share of their price that the job says.
 */
export function leftoversOf(plans: readonly { readonly plan: BoardPlan; readonly job: JobSettings }[]): Leftovers[] {
    const stocks = new Map<string, Stock>();
    for (const { stock } of plans.flatMap(({ plan }) => plan.stocks)) if (!stocks.has(stock.key)) stocks.set(stock.key, stock);
    return [...stocks.values()].map(stock => {
        const cut = plans.flatMap(({ plan, job }) =>
            plan.stocks.filter(own => own.stock.key === stock.key).flatMap(own => own.boards.map(board => ({ board, job }))));
        const planned = cut.filter(({ board }) => board.from !== 'already cut');
        const unused = without(stock, planned.map(({ board }) => board).filter(board => board.from === 'on hand'));
        const offcuts = planned.flatMap(({ board, job: { cutTo } }) => board.strips.filter(strip => strip.kept).map(strip => ({
            rippedTo: strip.rippedTo ?? board.width, length: roundDown(strip.offcut, cutTo.value),
            isThin: onEdgeTo(strip.pieces, strip.rippedTo, stock) !== undefined,
        })));
        const share = cut[0]?.job.offcutWorth?.value;
        return {
            stock, show: cut[0]?.job.show.value ?? 'feet-inches',
            pieces: gathered([
                ...unused.filter(({ width }) => width === undefined),
                ...offcuts.filter(one => one.rippedTo === undefined).map(({ length }) => ({ count: 1, length, ...worthOf(length, stock, share) })),
            ]),
            strips: stripsOf([
                ...unused.flatMap(({ width, ...left }) => (width === undefined ? [] : { width, ...left })),
                ...offcuts.flatMap(({ rippedTo: width, length, isThin }): LeftStrip[] => (
                    width === undefined ? [] : [{ count: 1, width, length, ...isThin && { isThin } }])),
                ...planned.flatMap(({ board, job }) => besideStrips(board, stock, job).map(beside => ({ count: 1, ...beside }))),
            ]),
        };
    }).filter(({ pieces, strips }) => pieces.length + strips.length > 0);
}

/** What is left in width beside the strips of a board or section that is ripped, over its whole length, where it is worth keeping. */
export function besideStrips(board: Board, { width, sheet }: Stock, { kerf, cutTo, shortestOffcut }: JobSettings): { width: Ticks; length: Ticks }[] {
    const across = board.crosswise ? board.length : board.width ?? width?.value.ticks;
    if (across === undefined) return [];
    return rippedParts(board).flatMap(({ section, strips }) => {
        const left = roundDown(across - strips.reduce((sum, { rippedTo }) => sum + (rippedTo ?? 0) + kerf.value, 0), cutTo.value);
        const along = section ?? (board.crosswise ? sheet!.value.width : board.length);
        return left >= NARROWEST_KEPT && along >= shortestOffcut.value ? [{ width: left, length: along }] : [];
    });
}
/** Narrower strips are burnt. Common practice, no source. */
const NARROWEST_KEPT = inches(1);

/** What is on hand, less the boards that are used. */
function without({ onHand }: Stock, used: readonly Board[]): (Left & { readonly width?: Ticks })[] {
    const gone = new Map<string, number>();
    for (const board of used) gone.set(onHandKey(board), (gone.get(onHandKey(board)) ?? 0) + 1);
    return onHand.map(({ value }) => {
        const { count, length, worth, width } = value, key = onHandKey(value), taken = Math.min(count, gone.get(key) ?? 0);
        gone.set(key, (gone.get(key) ?? 0) - taken);
        return { count: count - taken, length, ...worth && { worth }, ...width !== undefined && { width } };
    }).filter(({ count }) => count > 0);
}

function gathered(all: readonly Left[]): Left[] {
    const alike = new Map<string, Left>();
    for (const { count, length, worth } of all) {
        const key = onHandKey({ length, ...worth && { worth } });
        alike.set(key, { count: (alike.get(key)?.count ?? 0) + count, length, ...worth && { worth } });
    }
    return [...alike.values()].sort((a, b) => b.length - a.length || Number(a.worth !== undefined) - Number(b.worth !== undefined));
}

function stripsOf(all: readonly LeftStrip[]): LeftStrip[] {
    const alike = grouped(all, ({ width, isThin = false }) => `${width} ${isThin}`);
    return [...alike.values()].sort(([a], [b]) => b!.width - a!.width || Number(a!.isThin ?? false) - Number(b!.isThin ?? false))
        .flatMap(own => gathered(own).map(left => ({ ...left, width: own[0]!.width, ...own[0]!.isThin && { isThin: true as const } })));
}

function worthOf(length: Ticks, stock: Stock, share: Rational | undefined): { worth?: Money } {
    const worth = worthOfOffcut(length, stock, share);
    return worth ? { worth } : {};
}
