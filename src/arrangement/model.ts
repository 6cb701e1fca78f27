import type { Point, Vector } from '../plane/point.ts';
import type { Polygon } from '../plane/polygon.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Trouble } from './troubles.ts';

/**
 * A ceiling as it is worked out from a plan: plain data. Lengths are in ticks, and where a division left a fraction of one, with it, so
 * that equal pieces stay equal; they are rounded once, by whoever cuts. Corners of outlines are rounded once to whole ticks, so
 * outlines fit to a tick a corner. Angles in degrees.
 */
export interface Arrangement {
    readonly coffers: readonly Coffer[];
    readonly pieces: readonly Piece[];
    readonly joints: readonly Joint[];
    /** Where there is one, there are no coffers, pieces or joints. */
    readonly troubles: readonly Trouble[];
    /** Where a side would have no length at its face, and there is none: see faceless.ts. */
    readonly faceless: Faceless;
    /** Sides too near to an outside corner to end against another, which ends against them. */
    readonly turned: ReadonlySet<string>;
    /** By coffer: how the panel over it is made. */
    readonly panelCuts: ReadonlyMap<number, PanelCut>;
}

/**
 * By the two flanks that the place lies between: the side that is not there, the how manieth of its line or wall on that flank; null of a
 * face that has no side.
 */
export type Faceless = ReadonlyMap<string, NoSide | null>;
export interface NoSide { readonly of: string; readonly flank: 'left' | 'right'; readonly nth: number }

/**
 * How the panel over a coffer is made: along or across which way it is parted beside what stands free in it, how each of these parts lies, and in how many it
 * comes along that and across.
 */
export interface PanelCut { readonly way: Vector; readonly parted: 'along' | 'across'; readonly parts: readonly { readonly way: Vector; readonly along: number; readonly across: number }[] }

/** A line on its way from what it begins at to what it ends at. Places in ticks, along it, as far as its direction counts them from x and y = 0. */
export interface LineRun { readonly line: string; readonly start: LineEnd; readonly end: LineEnd; readonly passes: readonly Passing[] }
export interface LineEnd {
    /** The wall or line that it ends at. */
    readonly of: string;
    /** Equally deep, or it dies into what it ends at (also a band or a bare wall). */
    readonly relation: 'flush' | 'dies';
    /** On its center: the face of what it ends at, and where its bottom ends. */
    readonly face: number; readonly bottom: number;
    /** How far that face moves along the line for every tick across it: 0 where it is square to the line, 1 at 45 degrees. */
    readonly lean: number;
}
/** Another line that it crosses, or that ends at it. */
export interface Passing {
    readonly of: string;
    /** The other one ends here, at this flank of those who walk along. */
    readonly stem: 'left' | 'right' | null;
    /** Whether it dies into this one: its sides then are not broken. */
    readonly relation: 'flush' | 'dies' | 'over';
    /** The bottom of this line is cut here, by the other's that runs through, or at the face of a deeper one. */
    readonly cuts: boolean;
    /** On this line's center: where the other crosses it, the other's faces, and the edges of its bottom. */
    readonly at: number; readonly low: number; readonly high: number;
    readonly bottomLow: number; readonly bottomHigh: number;
    /** As of an end. */
    readonly lean: number;
}

export type Compass = 'north' | 'north-east' | 'east' | 'south-east' | 'south' | 'south-west' | 'west' | 'north-west';
export type Part = 'side' | 'cleat' | 'bottom' | 'blocking' | 'beam' | 'band' | 'wall-cleat' | 'trim' | 'molding' | 'panel';

export interface Coffer {
    /** Row by row from the north-west. */
    readonly number: number;
    /** Clockwise, from the corner that lies farthest to the north-west. */
    readonly edges: readonly CofferEdge[];
    /** Round what stands free in it: walked counterclockwise. */
    readonly holes: readonly (readonly CofferEdge[])[];
    readonly outline: Polygon;
    readonly holeOutlines: readonly Polygon[];
    /** In square ticks, exact but for rounding. */
    readonly area: number;
}
export interface CofferEdge {
    readonly on: Compass;
    /** The carriers whose faces it runs along: more than one where faces lie in line. */
    readonly along: readonly string[];
    readonly length: number;
    /** Inside the coffer, at the edge's start; over 180 at an outside corner. */
    readonly angle: number;
}

/**
 * One piece: a strip between two long edges, cut off at each end. Its frame runs along its carrier's flank, or its carrier; `edges` and
 * `ends` follow it. Of a side, a half beam, a band, a trim: from left to right for somebody who stands in the coffer and faces
 * it, groove edge down; of the bottom and blocking of a line: the way the line runs, its left edge first.
 */
export interface Piece {
    readonly part: Part;
    /** Its line or wall; of a trim the trim's name. */
    readonly of: string;
    /** Where it stands: the way a side looks, the edge of a coffer that a trim lies on. */
    readonly on: Compass | null;
    /** Of a side, its cleat, its molding: the flank of its line or wall. */
    readonly flank?: 'left' | 'right' | undefined;
    /** Of a side across the end of a half beam, its cleat, its molding: which end of its wall, walked with the room on the right. */
    readonly closes?: 'start' | 'end' | undefined;
    /** Of a side, its cleat, its molding, a trim: the coffers that its face looks into; of a panel the one under it; of other parts none. */
    readonly coffers: readonly number[];
    /** Counted along its line or wall (of sides and cleats, on their flank) the way it runs, from 1. */
    readonly nth: number;
    readonly edges: readonly [Edge, Edge];
    readonly ends: readonly [End, End];
    readonly long: number; readonly short: number;
    /** What it takes of a board: from the first of its four corners to the last, along it. */
    readonly overall: number;
    /** Across, on the plan: between its two long edges. */
    readonly width: number;
    /** The end with a miter where just one has one. */
    readonly hand: 'left' | 'right' | null;
    /** It is not its own mirror image: its ends lean differently. */
    readonly handed: boolean;
    /** What its edge at the wall is left wider, to be scribed. */
    readonly scribe: Ticks;
    /** The way its frame runs: its start is the end that lies farther back along it. */
    readonly way: Vector;
    /** Corners on the plan, not rounded: along its first edge from the start, then back along its second. */
    readonly corners: readonly [Point, Point, Point, Point];
    /** Down from the ceiling. */
    readonly top: Ticks; readonly foot: Ticks;
    /** What adds up to the length of its second edge. */
    readonly why: readonly Term[];
    /** Of a panel that is no rectangle: its own corners, clockwise on the plan, not rounded. `corners` then are those of the rectangle that it is cut from. */
    readonly shape?: Polygon;
}
export interface Edge { readonly name: EdgeName; readonly length: number }
export type EdgeName = 'face' | 'back' | 'channel' | 'wall' | 'room' | 'left' | 'right';
export type Cut =
    | 'miter' | 'outside-miter'
    /** Square, past the other side or against it. */
    | 'past' | 'butt'
    /** Along the face of what it ends at: a deeper beam, a band, a wall. */
    | 'dies'
    /** Against the edge of a piece that runs through. */
    | 'between'
    /** On to the far edge of what it ends at. */
    | 'runs-through'
    | 'splice' | 'square' | 'coped';
export interface End {
    readonly cut: Cut;
    /** The carrier that it meets; of a splice its own. */
    readonly meets: string;
    /** The flank of that which it meets there, where it stands between its faces or its edges. */
    readonly at?: 'left' | 'right' | undefined;
    /** From square: positive where the second edge is the longer at this end. */
    readonly angle: number;
    /** Of a crown that lies flat on the saw. */
    readonly saw?: { readonly miter: number; readonly bevel: number };
}
/**
 * One term of a length; the terms of a piece add up to it. `clear`: between the faces of what it stands between, along that edge. `end`:
 * what the meeting with that carrier adds to it, or takes off: a side's thickness, half a play, an overhang, a clearance, a bevel.
 * `short`: what a cleat is shorter at an end, `cleat` the neighbor's cleat that it makes room for.
 */
export interface Term { readonly what: 'clear' | 'end' | 'short' | 'cleat'; readonly of: string; readonly ticks: number }

export interface Joint {
    readonly kind: 'corner' | 'butt' | 'splice' | 'band-corner' | 'trim-corner';
    /** Places in `pieces`. */
    readonly pieces: readonly [number, number];
    readonly meets: readonly [string, string];
}
