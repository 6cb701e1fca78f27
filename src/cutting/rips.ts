import type { JobSettings, Stock } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Board, Rip } from './model.ts';

/** The boards that are ripped first, gathered by how they are ripped. */
export function ripsOf(boards: readonly Board[], stock: Stock, job: JobSettings): Rip[] {
    const rips = new Map<string, { widths: Rip['widths']; boards: number[]; left: Ticks }>();
    for (const board of boards) {
        const ripped = board.strips.flatMap(strip => strip.rippedTo ?? []);
        if (ripped.length === 0) continue;
        const across = board.crosswise ? board.length : stock.width?.value.ticks;
        const key = `${across} ${ripped.join(' ')}`;
        const rip = rips.get(key);
        if (rip) { rip.boards.push(board.number); continue; }
        const widths = [...new Set(ripped)].sort((a, b) => b - a).map(width => ({ width, count: ripped.filter(r => r === width).length }));
        const used = ripped.reduce((sum, width) => sum + width + job.kerf.value, 0);
        rips.set(key, { widths, boards: [board.number], left: Math.max(0, (across ?? used) - used) });
    }
    return [...rips.values()].sort((a, b) => b.boards.length - a.boards.length || a.boards[0]! - b.boards[0]!);
}
