import { WHOLE, type CuttingProblem, type Layout, type Picks, type StripCut } from './problem.ts';

/** One way to cut a strip or whole board to length, or one way to rip a board: what a plan is put together from. */
export type Column = CutColumn | RipColumn;
export interface CutColumn { readonly board: number; readonly lane: number; readonly picks: Picks }
/** `strips`: how many of each lane. */
export interface RipColumn { readonly board: number; readonly strips: Picks }

export const isRip = (column: Column): column is RipColumn => 'strips' in column;

export function keyOf(column: Column): string {
    return isRip(column) ? `${column.board}r${column.strips.join(' ')}` : `${column.board}c${column.lane} ${column.picks.join(' ')}`;
}

/** A whole board is bought with its cutting, a ripped one with its ripping; its strips are then there. */
export function buysBoard(column: Column): boolean {
    return isRip(column) || column.lane === WHOLE;
}

export function costOfColumn({ boards }: CuttingProblem, column: Column): number {
    return buysBoard(column) ? boards[column.board]!.cost : 0;
}

export function columnsOf(layouts: readonly Layout[]): Column[] {
    return layouts.flatMap(({ board, strips }): Column[] => {
        const cuts = strips.map(({ lane, picks }) => ({ board, lane, picks }));
        if (strips.every(strip => strip.lane === WHOLE)) return cuts;
        const counts = new Map<number, number>();
        for (const { lane } of strips) counts.set(lane, (counts.get(lane) ?? 0) + 1);
        return [...cuts, { board, strips: [...counts].sort(([a], [b]) => a - b) }];
    });
}

export interface Weighted { readonly column: Column; readonly times: number }

/**
 * Boards from columns: the strips of every ripped board are filled with the cuts there are of its kind and lane, those used
 * most first. With parts of a column (a linear solution), boards come in parts too.
 */
export function layoutsFrom(columns: readonly Weighted[]): { layout: Layout; times: number }[] {
    const cuts = new Map<string, { picks: Picks; left: number }[]>();
    for (const { column, times } of columns) {
        if (isRip(column) || column.lane === WHOLE) continue;
        const key = `${column.board} ${column.lane}`;
        cuts.set(key, [...cuts.get(key) ?? [], { picks: column.picks, left: times }]);
    }
    for (const same of cuts.values()) same.sort((a, b) => b.left - a.left);
    return columns.flatMap(({ column, times }) => {
        if (!isRip(column)) return column.lane === WHOLE ? [
            { layout: { board: column.board, strips: [{ lane: WHOLE, picks: column.picks }], times: 1 }, times },
        ] : [];
        const made: { layout: Layout; times: number }[] = [];
        for (let left = times; left > 1e-9;) {
            const part = Math.min(1, left);
            const strips = column.strips.flatMap(([lane, count]): StripCut[] =>
                Array.from({ length: count }, () => ({ lane, picks: takeCut(cuts.get(`${column.board} ${lane}`), part) })));
            made.push({ layout: { board: column.board, strips, times: 1 }, times: part });
            left -= part;
        }
        return made;
    });
}

function takeCut(cuts: { picks: Picks; left: number }[] | undefined, part: number): Picks {
    const cut = cuts?.find(c => c.left > 1e-9);
    if (!cut) return [];
    cut.left -= part;
    return cut.picks;
}
