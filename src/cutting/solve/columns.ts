import { keyOfCut, picksOf } from './layouts.ts';
import { WHOLE, type Cut, type Layout, type Picks } from './problem.ts';

/** One way to cut a board: what a plan is put together from. */
export interface Column extends Cut {
    /** How many of each item it gives. */
    readonly gives: Picks;
}

export function columnOf({ board, strips, sections }: Cut): Column {
    return { board, strips, ...sections && { sections }, gives: strips.length === 1 ? strips[0]!.picks : picksOf({ strips }) };
}

/** Of a board that is cut to length in its whole width. */
export function wholeColumn(board: number, picks: Picks): Column {
    return { board, strips: [{ lane: WHOLE, picks }], gives: picks };
}

export function columnsOf(layouts: readonly Layout[]): Column[] {
    return layouts.map(columnOf);
}

export const keyOf = keyOfCut;

export interface Weighted { readonly column: Column; readonly times: number }
