import type { Direction, JobSettings, Side } from '../job/model.ts';
import { printInches, printLength } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { baysAlong, type Bay } from '../ceiling/bays.ts';
import type { Ceiling, Line } from '../ceiling/model.ts';
import type { Box } from './model.ts';

/** What every part of the take-off needs, worked out once a room. */
export interface Setting {
    readonly ceiling: Ceiling;
    /** The job's resolution of cut lengths. */
    readonly step: Ticks;
    readonly bays: Readonly<Record<Direction, readonly Bay[]>>;
    /** A size as it is set at the saw: inches without feet, or millimeters. */
    size(ticks: Ticks): string;
}

export function settingOf(ceiling: Ceiling): Setting {
    const job = ceiling.room.job;
    return {
        ceiling, step: job.cutTo.value,
        bays: { 'east-west': baysAlong(ceiling, 'east-west'), 'north-south': baysAlong(ceiling, 'north-south') },
        size: sizeIn(job),
    };
}

function sizeIn(job: JobSettings): (ticks: Ticks) => string {
    return ticks => job.show.value === 'millimeters' ? printLength(ticks, 'millimeters') : printInches(ticks);
}

/** The two sides of a line, the lower coordinate first. */
export function sidesOf(runs: Direction): readonly [Side, Side] {
    return runs === 'east-west' ? ['north', 'south'] : ['west', 'east'];
}
/** The two ends of what runs in this direction, the lower coordinate first. */
export function endsOf(runs: Direction): readonly [Side, Side] {
    return runs === 'east-west' ? ['west', 'east'] : ['north', 'south'];
}

type Stretch = readonly [Ticks, Ticks];
/** A box from its extent along the line, across it, and down from the ceiling. */
export function boxOf(runs: Direction, [from, to]: Stretch, [low, high]: Stretch, [top, foot]: Stretch): Box {
    return runs === 'east-west'
        ? { west: from, east: to, north: low, south: high, top, foot }
        : { west: low, east: high, north: from, south: to, top, foot };
}

/** The coffer that a side of a line looks at. */
export function cofferBeside(ceiling: Ceiling, line: Line, bay: Bay, on: Side): number {
    const columns = ceiling.across.coffers.length;
    const index = (line.runs === 'east-west' ? ceiling.down : ceiling.across).lines.findIndex(other => other.name === line.name);
    const beyond = on === 'south' || on === 'east' ? index + 2 : index + 1;
    return line.runs === 'east-west' ? (beyond - 1) * columns + bay.number : (bay.number - 1) * columns + beyond;
}
