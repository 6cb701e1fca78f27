import type { Direction } from '../job/model.ts';
import type { Coffer as Face } from '../arrangement/model.ts';
import { extentOf } from '../plane/polygon.ts';
import { crossingPlace } from './chords.ts';
import type { Coffer, Crossing, Line, Run } from './model.ts';

/** Crossings row by row from the north-west, named by both lines: `B2`. */
export function crossingsOf(ns: readonly Line[], ew: readonly Line[], through: Direction): Crossing[] {
    const crosses = (line: Line, other: Line): boolean => {
        const at = crossingPlace(line, other);
        return at !== undefined && at > line.start && at < line.end;
    };
    const crossing = (row: Line, column: Line): Crossing => ({ name: row.name + column.name, ns: column, ew: row, through });
    return ew.flatMap(row => ns.filter(column => crosses(row, column) && crosses(column, row)).map(column => crossing(row, column)));
}

/** A coffer of the arrangement, and its place in the divisions. */
export function cofferOf({ number, outline }: Face, across: Run, down: Run): Coffer {
    const box = extentOf(outline);
    return { number, column: placeIn(across, box.west, box.east), row: placeIn(down, box.north, box.south), ...box, outline };
}

/** From 1; 0 where it is none. Corners are rounded to a tick. */
function placeIn({ start, end, lines, coffers }: Run, low: number, high: number): number {
    const i = coffers.findIndex((_, i) => Math.abs((lines[i - 1]?.high ?? start) - low) <= 1 && Math.abs((lines[i]?.low ?? end) - high) <= 1);
    return i + 1;
}
