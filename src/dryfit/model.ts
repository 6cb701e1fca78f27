import type { Piece } from '../takeoff/model.ts';
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
    /** What was looked at. */
    readonly looked: Looked;
    /** What does not fit, the worst first; empty where everything closes. */
    readonly faults: readonly Fault[];
}
export interface Looked {
    readonly pieces: number;
    /** Pairs near enough to each other to be looked at for overlap. */
    readonly pairs: number;
    /** Pairs that have to touch, and pairs that have to keep a planned gap. */
    readonly joints: number; readonly gaps: number;
    readonly undersides: number; readonly coffers: number;
}

/** Faults with one piece in common, or of one kind: one thing that somebody has to mend. */
export interface Fault {
    readonly kind: FaultKind;
    /** The piece they have in common. */
    readonly piece: Piece;
    /** How much longer, wider, thicker it is than its place, where that is the cause; empty where nothing of the piece itself is off. */
    readonly causes: readonly Cause[];
    readonly clashes: readonly Clash[];
    /** Other pieces that are off in the same way, by name. */
    readonly alike: readonly string[];
}
export type FaultKind = 'overlap' | 'joint' | 'underside' | 'missing' | 'coffer';
export interface Cause { readonly what: string; readonly is: string; readonly wanted: string }
/** Two pieces that are in each other, stand apart, or touch over too little. */
export interface Clash {
    readonly kind: 'overlap' | 'apart' | 'area';
    readonly other: Piece;
    /** How deep they are in each other, or how far apart where they should touch, or farther apart than planned. */
    readonly ticks: number;
    /** Square inches that touch, and that should; of a joint. */
    readonly touches?: number; readonly wanted?: number;
}
