import type { Given, Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Side } from './compass.ts';
import type { Recorded } from './status.ts';

/** How a wall differs from a string between its corners, and from there up to where the band goes. */
export interface WallBow {
    /** How far it stands into the room past the string, less than nothing behind it; `place` along it from its west or north end, or the side that is said. */
    readonly readings: readonly (Given<Ticks> & Recorded & { readonly place: Ticks; readonly from?: Side })[];
    /** How much farther into the room it stands under the ceiling than where it was measured, less than nothing farther back. */
    readonly lean?: Given<Ticks> & Recorded;
}
/** What a gauge read at one setting of a cutter, in the order of the boards, `every` so many. */
export interface GaugeLog {
    /** The first of its figures. */
    readonly at: Source;
    readonly readings: readonly Ticks[];
    readonly meant: Given<Ticks>;
    readonly of?: string;
    readonly every: number;
}
