import type { JobSettings, Stock } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import { roughThickness, roughWidth } from '../takeoff/rough-width.ts';
import type { Board, Rip, Strip } from './model.ts';

/** The boards that are ripped, and the sections of boards, gathered by how they are ripped. */
export function ripsOf(boards: readonly Board[], stock: Stock, job: JobSettings): Rip[] {
    const rips = new Map<string, { section?: Ticks; widths: Rip['widths']; boards: number[]; left: Ticks }>();
    for (const { board, section, strips } of boards.flatMap(rippedParts)) {
        const ripped = strips.flatMap(strip => strip.rippedTo ?? []);
        const across = board.crosswise ? board.length : board.width ?? stock.width?.value.ticks;
        // a strip on hand that is as wide as its pieces is only cut to length
        if (ripped.length === 1 && ripped[0] === board.width) continue;
        const key = `${across} ${section ?? ''} ${ripped.join(' ')}`;
        const rip = rips.get(key);
        if (rip) { rip.boards.push(board.number); continue; }
        const widths = [...new Set(ripped)].sort((a, b) => b - a).map(width => ({ width, count: ripped.filter(r => r === width).length }));
        const used = ripped.reduce((sum, width) => sum + width + job.kerf.value, 0);
        rips.set(key, { ...section !== undefined && { section }, widths, boards: [board.number], left: Math.max(0, (across ?? used) - used) });
    }
    return [...rips.values()].sort((a, b) => b.boards.length - a.boards.length || a.boards[0]! - b.boards[0]!);
}

/**
 * The numbers that its strips go by everywhere, in the order of `strips`: those that are ripped from 1 on through all its sections, then what is
 * cut in its whole width, which nobody calls a strip.
 */
export function stripNumbers({ strips }: Pick<Board, 'strips'>): number[] {
    const ripped = strips.filter(strip => strip.rippedTo !== undefined);
    return strips.map(strip => 1 + (strip.rippedTo === undefined ? ripped.length : ripped.indexOf(strip)));
}

/** What of a board is ripped: its sections, or the whole of it; with the strips that lie abreast there. */
export function rippedParts(board: Board): { board: Board; section?: Ticks; strips: readonly Strip[] }[] {
    if (board.sections) return board.sections.map((section, i) => ({ board, section, strips: board.strips.filter(strip => strip.section === i + 1) }));
    return board.strips.some(strip => strip.rippedTo !== undefined) ? [{ board, strips: board.strips }] : [];
}

/** The second dimension of what is cut from a strip, where that is less than the board's thickness: the strip is ripped on edge once more. */
export function onEdgeTo(pieces: readonly Piece[], rippedTo: Ticks | undefined, stock: Stock): Ticks | undefined {
    const thickness = stock.thickness?.value.ticks, sample = pieces[0];
    if (!sample || thickness === undefined || rippedTo === undefined) return undefined;
    const other = roughWidth(sample) === rippedTo ? roughThickness(sample) : roughWidth(sample);
    return other < thickness ? other : undefined;
}
