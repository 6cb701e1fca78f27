import type { Direction, JobSettings, Side } from '../job/model.ts';
import { printInches, printLength } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Ceiling, HalfBeam, Line, WholeSection } from '../ceiling/model.ts';
import { sectionAt, type Flank } from '../ceiling/flanks.ts';
import { isLevel } from '../ceiling/shape.ts';
import type { Point } from '../plane/point.ts';
import { pairsOf, type Pairs } from './lie.ts';
import type { Corners } from './model.ts';

/** What every part of the take-off needs, worked out once a room. */
export interface Setting {
    readonly ceiling: Ceiling;
    /** Every piece of the arrangement. */
    readonly pairs: Pairs;
    /** The job's resolution of cut lengths. */
    readonly step: Ticks;
    /** The beam of a line, or the half beam along a wall, by its name in the plan. */
    beam(name: string): Line | HalfBeam | undefined;
    /** The section as one flank of it has it; a half beam has but one. */
    sectionAt(name: string, flank: Flank | undefined): WholeSection | undefined;
    isWall(name: string): boolean;
    /** Where a line stands among the lines; -1 of a wall. */
    placeOf(name: string): number;
    /** Which way a line or a wall runs. */
    runsOf(name: string): Direction;
    /** A size as it is set at the saw: inches without feet, or millimeters. */
    size(ticks: Ticks): string;
}

export function settingOf(ceiling: Ceiling): Setting {
    const job = ceiling.room.job, beams = new Map<string, Line | HalfBeam>(ceiling.lines.map(line => [line.name, line]));
    for (const [wall, own] of Object.entries(ceiling.around)) if (own?.kind === 'half-beam') beams.set(wall, own);
    const walls = new Map(ceiling.walls.map(wall => [wall.name, isLevel(wall) ? 'east-west' : 'north-south'] as const));
    const runs = new Map(ceiling.lines.map(line => [line.name, line.runs])), places = new Map(ceiling.lines.map((line, i) => [line.name, i]));
    return {
        ceiling, pairs: pairsOf(ceiling), step: job.cutTo.value,
        beam: name => beams.get(name),
        sectionAt: (name, flank) => {
            const beam = beams.get(name);
            return beam && flank && 'otherSide' in beam ? sectionAt(beam, flank) : beam?.section;
        },
        isWall: name => walls.has(name),
        placeOf: name => places.get(name) ?? -1,
        runsOf: name => runs.get(name) ?? walls.get(name) ?? 'north-south',
        size: sizeIn(job),
    };
}

/** The same few sizes are told of every piece. */
function sizeIn(job: JobSettings): (ticks: Ticks) => string {
    const known = new Map<Ticks, string>();
    return ticks => {
        let text = known.get(ticks);
        if (text === undefined) known.set(ticks, text = job.show.value === 'millimeters' ? printLength(ticks, 'millimeters') : printInches(ticks));
        return text;
    };
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
