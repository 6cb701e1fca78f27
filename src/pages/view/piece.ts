import type { Ticks } from '../../quantity/ticks.ts';
import type { Part } from '../../takeoff/model.ts';

/** A piece as the view has it. */
export interface ViewPiece {
    /** Its id in the cut list. */
    readonly key: string;
    readonly part: Part;
    /** What it is called, where it goes, how long it is. */
    readonly words: string;
    /** Number of its place in the text. */
    readonly at: number;
    readonly shape: number;
    /** x, y, z of each corner, one after the other. */
    readonly corners: readonly Ticks[];
}
