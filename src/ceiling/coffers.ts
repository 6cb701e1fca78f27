import type { Direction } from '../job/model.ts';
import type { Coffer, Crossing, Line, Run } from './model.ts';

/** Crossings row by row from the north-west, named by both lines: `B2`. */
export function crossingsOf(ns: readonly Line[], ew: readonly Line[], through: Direction): Crossing[] {
    return ew.flatMap(row => ns.map(column => ({ name: row.name + column.name, ns: column, ew: row, through })));
}

/** Coffers 1, 2, 3 … row by row from the north-west, each with the lines on its four sides. */
export function coffersOf(across: Run, down: Run): Coffer[] {
    const columns = cells(across), rows = cells(down);
    return rows.flatMap((row, r) => columns.map((column, c): Coffer => ({
        number: r * columns.length + c + 1, column: c + 1, row: r + 1,
        west: column.low, east: column.high, north: row.low, south: row.high,
        bounds: { north: row.before, east: column.after, south: row.after, west: column.before },
    })));
}

function cells(run: Run): { low: number; high: number; before: Line | null; after: Line | null }[] {
    return run.coffers.map((_, i) => {
        const before = run.lines[i - 1] ?? null, after = run.lines[i] ?? null;
        return { low: before?.high ?? run.start, high: after?.low ?? run.end, before, after };
    });
}
