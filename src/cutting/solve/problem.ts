/**
 * Boards to buy as a plain problem in whole numbers: nothing of wood is left in it, it can be sent to a worker, and a second
 * program can solve it. The least cost is sought.
 *
 * A board is cut to length across its whole width (lane 0), or ripped first into strips of given widths (lanes 1, 2, ...),
 * each of which is then cut to length by itself.
 */
export interface CuttingProblem {
    readonly items: readonly Item[];
    readonly boards: readonly BoardKind[];
    /** Width of a strip with one kerf, of lanes 1, 2, ...; empty where nothing is ripped first. */
    readonly strips: readonly number[];
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
    /** True for a sheet that is ripped across its length: nothing is cut from its whole width. */
    readonly ripOnly?: boolean;
}

export const WHOLE = 0;

/** So many of an item: a strip's or board's content. */
export type Picks = readonly (readonly [item: number, count: number])[];

/** Boards of one kind that are cut alike. A board that is not ripped has one strip, in lane 0. */
export interface Layout {
    readonly board: number;
    readonly strips: readonly StripCut[];
    readonly times: number;
}
export interface StripCut { readonly lane: number; readonly picks: Picks }

export function laneCount({ strips }: CuttingProblem): number {
    return 1 + strips.length;
}

export function canCut({ ripOnly }: BoardKind, lane: number): boolean {
    return lane !== WHOLE || !ripOnly;
}

export function pieceCount({ items }: CuttingProblem): number {
    return items.reduce((sum, item) => sum + item.count, 0);
}

export function costOfLayouts(problem: CuttingProblem, layouts: readonly Layout[]): number {
    return layouts.reduce((sum, { board, times }) => sum + problem.boards[board]!.cost * times, 0);
}

/** All costs are multiples of this, so a plan that is cheaper is cheaper by at least as much. */
export function costStep({ boards }: CuttingProblem): number {
    return boards.reduce((step, { cost }) => divisor(step, cost), 0) || 1;
}

/** The greatest common divisor of two whole numbers. */
export function divisor(a: number, b: number): number {
    while (b > 0) [a, b] = [b, a % b];
    return a;
}
