import type { Given, Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Direction, Side } from './compass.ts';
import type { Recorded } from './status.ts';

/** A row of joists over the room, as far as it is said, and what was found to differ from it. */
export interface Joists extends Recorded {
    /** The words of their size. */
    readonly at: Source;
    /** As it is named: `2x10`. */
    readonly size: string;
    readonly every: Given<Ticks>;
    readonly running: Given<Direction>;
    /** The center of the first one, from the side that they are counted from; undefined: nobody knows where they are. */
    readonly first?: Given<Ticks>;
    readonly from: Side;
    /** Of the edge that screws go into: said, or of the published dressed size. */
    readonly width?: Ticks;
    /** The wood that is stamped on them. */
    readonly of?: Given<string>;
    readonly found: readonly FoundJoist[];
}
/** The center of a joist, from the side that the row is counted from. */
export interface FoundJoist extends Given<Ticks> { readonly how: 'moved' | 'missing' | 'doubled' | 'extra' }
