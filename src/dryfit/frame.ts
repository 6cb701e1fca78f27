import { baysAlong } from '../ceiling/bays.ts';
import type { Ceiling, Line, Run } from '../ceiling/model.ts';
import type { Direction } from '../job/model.ts';

/**
 * The grid as it comes to stand when its coffers have the sizes they are cut to. The layout itself keeps exact sizes;
 * equal pieces that are cut at one stop of the saw shift the lines by a step of the tape here and there, and what is left
 * of the run stands half at either end of it, at the band.
 */
export interface Frame { readonly 'east-west': Rank; readonly 'north-south': Rank }

/** One direction: what the bays along it are, and where the lines across it stand. */
export interface Rank {
    readonly bays: readonly FrameBay[];
    /** Left at either end, at the band. May be half a tick off whole. */
    readonly spare: number;
    readonly lines: ReadonlyMap<Line, Standing>;
}
/** `shifted`: how far its start is from where the layout, at exact sizes, has it. */
export interface FrameBay { readonly number: number; readonly start: number; readonly end: number; readonly shifted: number; readonly before: Line | null; readonly after: Line | null }
/** Outer faces of a line, its channel, and the middle of both. */
export interface Standing { readonly low: number; readonly high: number; readonly channelLow: number; readonly channelHigh: number; readonly middle: number }

export function frameOf(ceiling: Ceiling): Frame {
    return { 'east-west': rankOf(ceiling, ceiling.across, 'east-west'), 'north-south': rankOf(ceiling, ceiling.down, 'north-south') };
}

/** Where a line stands across its own direction. */
export function standing(frame: Frame, line: Line): Standing {
    return frame[line.runs === 'east-west' ? 'north-south' : 'east-west'].lines.get(line)!;
}

function rankOf(ceiling: Ceiling, run: Run, along: Direction): Rank {
    const spare = run.residue.rest / 2;
    const lines = new Map<Line, Standing>();
    let at = run.start + spare;
    const bays = baysAlong(ceiling, along).map(({ number, start, before, after, cutCoffer }): FrameBay => {
        const bay = { number, start: at, end: at + cutCoffer, shifted: at - start, before, after };
        at = bay.end;
        if (after) {
            const { outerWidth, sideThickness, innerWidth } = after.section;
            const channelLow = at + sideThickness.ticks, channelHigh = channelLow + innerWidth.ticks;
            lines.set(after, { low: at, high: at + outerWidth.ticks, channelLow, channelHigh, middle: (channelLow + channelHigh) / 2 });
            at += outerWidth.ticks;
        }
        return bay;
    });
    return { bays, spare, lines };
}
