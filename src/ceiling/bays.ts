import type { Direction } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Ceiling, Line, Splice } from './model.ts';

/** One bay of a line: its stretch along one row or column of coffers, between two crossings or a crossing and the band. */
export interface Bay {
    /** Counted from the line's west or north end, from 1. */
    readonly number: number;
    /** Faces of the coffers along it. */
    readonly start: Ticks; readonly end: Ticks;
    /** The lines crossing at its west or north end, and at its east or south end; null at the band or wall. */
    readonly before: Line | null; readonly after: Line | null;
    /** What the coffers along it are cut to. */
    readonly cutCoffer: Ticks;
}

/** The bays of every line that runs in this direction: they are the same for all of them. */
export function baysAlong(ceiling: Pick<Ceiling, 'across' | 'down'>, runs: Direction): Bay[] {
    const run = runs === 'east-west' ? ceiling.across : ceiling.down;
    return run.coffers.map((coffer, i) => {
        const before = run.lines[i - 1] ?? null;
        const start = before ? before.high : run.start;
        return { number: i + 1, start, end: start + coffer, before, after: run.lines[i] ?? null, cutCoffer: run.residue.cutCoffers[i]! };
    });
}

/** The middle of a line, across it; half a tick is left away. */
export function centerOf(line: Line): Ticks {
    return Math.floor((line.low + line.high) / 2);
}

/**
 * Where the channel between the sides begins, and where the bottom lies, in its middle: what it is narrower or wider is on both sides,
 * an odd tick on the low side.
 */
export function channelLow(line: Line): Ticks {
    return line.low + line.section.sideThickness.ticks;
}
export function channelHigh(line: Line): Ticks {
    return line.high - line.section.sideThickness.ticks;
}
export function bottomLow(line: Line): Ticks {
    return channelLow(line) + Math.ceil((line.section.innerWidth.ticks - line.section.bottomWidth.ticks) / 2);
}
export function bottomHigh(line: Line): Ticks {
    return bottomLow(line) + line.section.bottomWidth.ticks;
}

/** A cut-between piece runs from the piece that crosses before it to the one that crosses after it. */
export function between(bay: Bay, high: (line: Line) => Ticks, low: (line: Line) => Ticks): Ticks {
    return (bay.after ? low(bay.after) : bay.end) - (bay.before ? high(bay.before) : bay.start);
}

/** What splices make of a run. */
export function stretches(start: Ticks, splices: readonly Splice[], end: Ticks): [Ticks, Ticks][] {
    const stops = [start, ...splices.map(splice => splice.at), end];
    return stops.slice(1).map((stop, i) => [stops[i]!, stop]);
}
