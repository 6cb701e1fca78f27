import type { Direction, Fixture, Spacing } from '../job/model.ts';
import type { Given } from '../provenance/source.ts';
import type { Show } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';

/** More than these is a slip of the keyboard, not a ceiling; it is told, and not worked out. */
export const MOST_LINES = 40;

/** One direction of the room, to be divided into coffers by lines. Positions from the west or the north wall. */
export interface Division {
    readonly along: Direction;
    readonly spacing: Spacing;
    /** Inside the band. */
    readonly start: Ticks; readonly end: Ticks;
    /** What runs along the wall at either end; null: nothing. */
    readonly ends: readonly (string | null)[];
    /** From wall to wall. */
    readonly room: Ticks;
    /** Center of the feature that a coffer is to be centered on, and the words that ask for it. */
    readonly feature?: Feature;
    /** Lines stand by their centers, in equal parts of the room, and not by the faces of the coffers. */
    readonly byCenters?: boolean;
    /** Outer width and name of the line with this index; the width undefined where its profile does not say enough. */
    width(index: number): Ticks | undefined;
    /** From its west or north face to its center, where its width is known. */
    toCenter(index: number): number;
    name(index: number): string;
    /** The job's resolution of cut lengths, and how it shows them. */
    readonly step: Ticks; readonly show: Show;
}
export interface Feature { readonly position: Ticks; readonly by: Given<Fixture> }

export interface Divided {
    /** West or north face, and width, of each line. */
    readonly lows: readonly Ticks[]; readonly widths: readonly Ticks[];
    /** Sizes of the coffers as they are meant: equal ones exactly equal, so they may be fractions of a tick. */
    readonly sizes: readonly number[];
}

/** What the lines leave for the coffers. */
export function freeOf(run: Pick<Division, 'start' | 'end'>, widths: readonly Ticks[]): Ticks {
    return run.end - run.start - widths.reduce((sum, width) => sum + width, 0);
}

/** The wall that the run is measured along. */
export function wallOf(run: Pick<Division, 'along'>): 'north' | 'east' {
    return run.along === 'east-west' ? 'north' : 'east';
}
