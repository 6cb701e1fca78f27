import type { Direction, JobSettings, Side } from '../job/model.ts';
import { printInches, printLength } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { baysAlong, type Bay } from '../ceiling/bays.ts';
import type { Ceiling } from '../ceiling/model.ts';
import type { Point } from '../plane/point.ts';
import { Pairs } from './lie.ts';
import type { Corners } from './model.ts';

/** What every part of the take-off needs, worked out once a room. */
export interface Setting {
    readonly ceiling: Ceiling;
    /** Every piece of the arrangement. */
    readonly pairs: Pairs;
    /** The job's resolution of cut lengths. */
    readonly step: Ticks;
    readonly bays: Readonly<Record<Direction, readonly Bay[]>>;
    /** A size as it is set at the saw: inches without feet, or millimeters. */
    size(ticks: Ticks): string;
}

export function settingOf(ceiling: Ceiling): Setting {
    const job = ceiling.room.job;
    return {
        ceiling, pairs: new Pairs(ceiling), step: job.cutTo.value,
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

/** Corners on the plan of what runs from one place to another along a line, and from one to another across it. */
export function cornersOf(runs: Direction, [from, to]: readonly [Ticks, Ticks], [low, high]: readonly [Ticks, Ticks]): Corners {
    const at = (along: Ticks, across: Ticks): Point => (runs === 'east-west' ? { x: along, y: across } : { x: across, y: along });
    return [at(from, low), at(from, high), at(to, high), at(to, low)];
}
