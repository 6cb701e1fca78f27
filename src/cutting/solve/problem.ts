import { gcd } from '../../quantity/gcd.ts';

/**
 * Boards to buy as a plain problem in whole numbers: nothing of wood is left in it, it can be sent to a worker, and a second
 * program can solve it. The least cost is sought.
 *
 * A board is cut across into pieces of its whole width (lane 0) and into sections; a section is ripped into strips of given widths
 * (lanes 1, 2, ...), each of which is then cut to length by itself. A board that is ripped over its whole length is a section as
 * long as the board.
 */
export interface CuttingProblem {
    readonly items: readonly Item[];
    readonly boards: readonly BoardKind[];
    /** Width of a strip with one kerf, of lanes 1, 2, ...; empty where nothing is ripped. */
    readonly strips: readonly number[];
    /** The shortest section, with one cut, that may be cut off a board and ripped; undefined: boards are ripped over their whole length only. */
    readonly shortestSection?: number;
}
/** Pieces that are alike. */
export interface Item {
    /** Length with one cut. A strip or board holds what adds up to at most its capacity. */
    readonly size: number;
    readonly count: number;
    /** The lanes it may be cut from. */
    readonly lanes: readonly number[];
}
/** Boards of one length and price. */
export interface BoardKind {
    /** Length less the end trim, plus one cut: n pieces take n - 1 cuts. */
    readonly capacity: number;
    readonly cost: number;
    /** How many there are; null: as many as it takes. */
    readonly available: number | null;
    /** Width with one kerf: the strips ripped from it add up to at most this. */
    readonly across: number;
    /** True for a sheet that is ripped across its length, and for a strip on hand: nothing is cut from its whole width. */
    readonly ripOnly?: boolean;
}

export const WHOLE = 0;

/** So many of an item: a strip's or board's content. */
export type Picks = readonly (readonly [item: number, count: number])[];

/** How a board is cut: across into pieces and sections, or ripped over its whole length. */
export interface Cut {
    readonly board: number;
    /** At most one in lane 0; those of other lanes lie in a section, where there are any, else over the whole length. */
    readonly strips: readonly StripCut[];
    /** The lengths of the sections, each with one cut. */
    readonly sections?: readonly number[];
}
/** Boards of one kind that are cut alike. */
export interface Layout extends Cut { readonly times: number }
export interface StripCut {
    readonly lane: number;
    readonly picks: Picks;
    /** Which section it is ripped from. */
    readonly section?: number;
}

export function laneCount({ strips }: CuttingProblem): number {
    return 1 + strips.length;
}

export function canCut({ ripOnly }: BoardKind, lane: number): boolean {
    return lane !== WHOLE || !ripOnly;
}

export function pieceCount({ items }: CuttingProblem): number {
    return items.reduce((sum, item) => sum + item.count, 0);
}

/** By item, what part of the widest board's width it takes: 1 where it is cut from the whole width. */
export function widthShares({ items, boards, strips }: CuttingProblem): number[] {
    const widest = Math.max(...boards.map(kind => kind.across));
    return items.map(({ lanes }) => Math.min(1, ...lanes.filter(lane => lane > WHOLE).map(lane => strips[lane - 1]! / widest)));
}

export function costOfLayouts(problem: CuttingProblem, layouts: readonly Layout[]): number {
    return layouts.reduce((sum, { board, times }) => sum + problem.boards[board]!.cost * times, 0);
}

/** All costs are multiples of this, so a plan that is cheaper is cheaper by at least as much. */
export function costStep({ boards }: CuttingProblem): number {
    return boards.reduce((step, { cost }) => gcd(step, cost), 0) || 1;
}
