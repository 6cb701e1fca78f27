import type { Part, Piece } from '../takeoff/model.ts';
import type { Ticks } from '../quantity/ticks.ts';

/**
 * The dry fit: the pieces of the cut list as solids, each in the form that its own line of the list gives it, standing where
 * the layout puts them. x runs east from the west wall, y south from the north wall, z down from the ceiling; whole ticks.
 */

/** A point in plan. */
export type Point = readonly [x: Ticks, y: Ticks];

/**
 * An upright prism: a convex outline in plan, from `top` down to `foot`. Its corners are in the order in which the sum of
 * x1 * y2 - x2 * y1 is positive (clockwise as one reads the plan, north up), so the solid is on the right of every edge.
 */
export interface Prism { readonly outline: readonly Point[]; readonly top: Ticks; readonly foot: Ticks }

/**
 * One piece. It is one prism, or two where a rabbet takes a corner out of it; they share a face and do not overlap. Eased
 * edges, biscuit slots and pocket holes are not taken out of it.
 */
export interface Solid { readonly piece: Piece; readonly prisms: readonly Prism[] }

/** What the dry fit of one room came to. */
export interface DryFit {
    readonly room: string;
    /** One a line of the cut list, as far as the layout has a place for it. */
    readonly solids: readonly Solid[];
    readonly looked: Looked;
    /** What does not fit, each as one thing that somebody has to mend; empty where everything closes. */
    readonly faults: readonly Fault[];
}

/** What was looked at. */
interface Looked {
    readonly pieces: number;
    /** Pairs near enough to each other to be checked for overlap. */
    readonly pairs: number;
    /** Pairs that have to touch, and pairs that have to keep a planned gap. */
    readonly joints: number; readonly gaps: number;
    readonly undersides: number; readonly coffers: number; readonly allCoffers: number;
}

export type Fault = Misfit | Miscount | Unflush | OffSize;

/** A piece that does not stand to others as it should. */
export interface Misfit {
    readonly kind: 'misfit';
    /** The piece that all of it has in common. */
    readonly piece: Piece;
    /** Where its line of the list differs from its place; empty where nothing does, and the text itself wants it so. */
    readonly causes: readonly Cause[];
    /** Empty where the piece would fit, but its line does not say how it is cut. */
    readonly clashes: readonly Clash[];
    /** Other pieces of the same part that are off in the same way. */
    readonly alike: readonly Piece[];
}

/** What a line of the list says, and what its place wants; lengths in ticks. */
export type Cause =
    | { readonly what: 'length' | 'width' | 'thickness' | 'rabbet width' | 'rabbet height'; readonly is: Ticks; readonly wanted: Ticks }
    /** The first end is that to the west or north. */
    | { readonly what: 'miter'; readonly end: 'first' | 'last'; readonly is: number; readonly wanted: number }
    /** The mitered end is the other one; or it is not said which, and it matters. */
    | { readonly what: 'hand'; readonly is: Piece['hand'] }
    /** The rabbet is not there, or along another edge. */
    | { readonly what: 'rabbet' }
    /** The line contradicts itself: back and miters leave another face. */
    | { readonly what: 'face'; readonly is: Ticks; readonly wanted: Ticks };

/** How a piece stands to another one. */
export interface Clash {
    /**
     * In each other by `ticks`; so far apart where they should touch; with a gap that is so much wider than planned; touching, or
     * keeping their gap, over another area than they should; or, as it is planned, `ticks` apart (negative: in each other) because
     * the tape has no finer step.
     */
    readonly kind: 'overlap' | 'apart' | 'gap' | 'area' | 'rounded';
    /** The other piece, or "the ceiling", "the north wall". */
    readonly other: Piece | string;
    readonly ticks: number;
    /** Square inches that touch, and that should. */
    readonly touches?: number; readonly wanted?: number;
}

/** A place without its piece, a piece that is on the list more than once, or one that has no place. */
export interface Miscount {
    readonly kind: 'missing' | 'doubled' | 'no-place';
    readonly id: string;
    readonly part: Part;
    /** The piece, where there is one; else a piece of the same part, to tell the text by. */
    readonly piece: Piece | undefined;
    readonly count: number;
    /** Missing, and there is no room for one: the text leaves it none. */
    readonly noRoom: boolean;
    /** Others like it. */
    readonly alike: readonly string[];
}

/** An underside out of the plane of the beams; `ticks` above it, or below it where negative. */
export interface Unflush { readonly kind: 'underside'; readonly piece: Piece; readonly ticks: Ticks; readonly alike: readonly Piece[] }

/**
 * A coffer that opens to another size than promised, measured from face to face between the pieces around it. `planned`:
 * the list does what the layout wants at the steps of the tape, so it is these steps that make the difference.
 */
export interface OffSize {
    readonly kind: 'coffer'; readonly coffer: number; readonly along: 'north-south' | 'east-west';
    readonly is: Ticks; readonly wanted: Ticks; readonly planned: boolean;
    readonly pieces: readonly Piece[];
    readonly alike: readonly number[];
}
