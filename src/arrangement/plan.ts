import type { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';

/**
 * What a ceiling is made of, before anything is worked out: walls in order, lines that run between them, how they meet. Plain data;
 * names are the caller's and come back in everything that is worked out, so that he finds his own words again. x runs east,
 * y south. Lengths in ticks: whole, or exact fractions where a division made them.
 */
export type Exact = Ticks | Rational;
export interface Spot { readonly x: Exact; readonly y: Exact }
interface Heading { readonly x: number; readonly y: number }

export interface Plan {
    /** Clockwise on the plan: the room lies to the right of every wall. Each wall ends where the next one starts. */
    readonly walls: readonly Wall[];
    readonly lines: readonly BeamLine[];
    /** The family whose bottoms and blocking run through at crossings; where both or neither are of it, the line that is named first. */
    readonly through: string;
    readonly corners: Corners;
    /** What holds for one meeting alone. */
    readonly meetings?: readonly MeetingChoice[];
    /** Round every coffer, in this order: ceiling trim, bed molding, … */
    readonly trims?: readonly Trim[];
    readonly panel?: Panel;
}

/**
 * Sheets between the ceiling and all beams, one over each coffer, which meet behind the beams: their edges lie on center lines and at walls. Above a beam
 * that wraps something, which hangs from the ceiling itself, there is none.
 */
export interface Panel {
    readonly thickness: Ticks;
    /** What is left open between two of them behind a beam, and between one and a wall. */
    readonly gap: Ticks;
    /** The ways in which their lengths may run, the better first where they come to the same: one for all, or where each may lie as it likes, for each. */
    readonly ways: readonly [Heading, ...Heading[]];
    readonly each: boolean;
    /** The largest that comes out of a sheet, with its grain and across it. `seams`: what is larger comes in several, as equal as can be. */
    readonly sheet?: { readonly along: Ticks; readonly across: Ticks };
    readonly seams: boolean;
}

export interface Wall {
    readonly name: string;
    readonly from: Spot;
    readonly perimeter: Perimeter;
    /** Where its band, its half beam's bottom and blocking are spliced: square through these spots. */
    readonly splices?: readonly Spot[];
    /** Where the cleat on it is, if not there. */
    readonly cleatSplices?: readonly Spot[];
    /** Where sides of its half beam are, with their moldings. */
    readonly sideSplices?: readonly Spot[];
}
export type Perimeter = { readonly kind: 'bare' } | Band | HalfBeam | HalfTimber;
interface Band { readonly kind: 'band'; readonly thickness: Ticks; readonly top: Ticks; readonly foot: Ticks }
export interface HalfBeam {
    readonly kind: 'half-beam';
    /** From the wall to the back of its side. */
    readonly inside: Ticks;
    readonly depth: Ticks;
    readonly side: SideBoard;
    readonly bottom?: BottomBoard;
    /** `clearance`: how far it stands off the face of a deeper half beam that it dies into, square to that face. */
    readonly blocking?: { readonly thickness: Ticks; readonly clearance?: Ticks };
    readonly cleats?: Cleats;
    readonly wallCleat?: { readonly width: Ticks; readonly height: Ticks };
    readonly molding?: Molding;
    /** What its bottom is left wider at the wall, to be scribed. */
    readonly scribe?: Ticks;
}

/** A timber along the wall, `width` wide: ripped to that, or whole. `scribe`: what its edge at the wall is left wider, to be scribed. */
interface HalfTimber { readonly kind: 'half-timber'; readonly width: Ticks; readonly depth: Ticks; readonly scribe?: Ticks }

export interface BeamLine {
    readonly name: string;
    /** Lines that are laid out together: 'north-south', 'east-west', 'falling', 'rising' … */
    readonly family: string;
    /** The walls or lines that it runs between, by name. */
    readonly from: string; readonly to: string;
    /** A spot on its center line, and the way it runs (whole numbers, not both 0). Its center is the middle of the inside. */
    readonly spot: Spot; readonly heading: Heading;
    readonly beam: Beam;
    /** Where what runs through is spliced: square through these spots. */
    readonly splices?: readonly Spot[];
    /** Where sides are, with their moldings, by flank. */
    readonly sideSplices?: { readonly left: readonly Spot[]; readonly right: readonly Spot[] };
}
export type Beam = BoxBeam | SolidBeam;
/** Left and right as seen by somebody who walks along the line. */
export interface BoxBeam {
    readonly kind: 'box';
    /** Between the backs of the sides. */
    readonly inside: Ticks;
    /** From the ceiling down, in all. */
    readonly depth: Ticks;
    readonly left: SideBoard; readonly right: SideBoard;
    readonly bottom?: BottomBoard;
    /**
     * `narrower` than the inside, in all: of a box that is made at the bench and slipped over it. `short`, at each end: of what is cut between
     * other lines. `clearance`: how far it stands off the face of a deeper beam that it dies into, square to that face.
     */
    readonly blocking?: { readonly thickness: Ticks; readonly narrower: Ticks; readonly short?: number; readonly clearance: Ticks };
    readonly cleats?: Cleats;
    readonly molding?: Molding;
    /** What it is built round hangs from the ceiling itself. */
    readonly wraps?: boolean;
}
/** One timber. Box beams die into it. */
interface SolidBeam { readonly kind: 'solid'; readonly width: Ticks; readonly depth: Ticks }

/** `letIn`: what a bottom in rabbets goes into it. */
export interface SideBoard { readonly thickness: Ticks; readonly heldDown: Ticks; readonly letIn?: Ticks }
/**
 * Between the sides; under them, and beyond each by `by`; or let into each by as much as that says. `play` in all, not a side: none where it lies
 * under the sides, none in a half beam. `by` may be half a tick, and less than nothing where it stops short.
 */
export interface BottomBoard { readonly place: 'between-sides' | 'under-sides' | 'in-rabbets'; readonly by: Ticks; readonly play: Ticks; readonly thickness: Ticks }
/** `short`: what each is shorter than the back of its side, at each end. `longest`: what is longer comes in several, all of one length. */
interface Cleats { readonly width: Ticks; readonly height: Ticks; readonly short: Ticks; readonly longest?: number }

/** Along the lower edge of each side: from `inside` behind its face to `beyond` it. Heights from the ceiling down. */
export interface Molding { readonly inside: Ticks; readonly beyond: Ticks; readonly top: Ticks; readonly foot: Ticks }

/** Butted: the sides of this family (or of the carrier of this name) run past. Outside corners are always mitered. */
export type Corners = { readonly kind: 'mitered' } | { readonly kind: 'butted'; readonly past: string };

/** For the meeting of two carriers, in either order. */
export interface MeetingChoice {
    readonly of: readonly [string, string];
    /** The line whose bottom and blocking run through. */
    readonly through?: string;
    /** The line that dies into the other although they are equally deep. */
    readonly dies?: string;
    readonly corners?: Corners;
}

/**
 * A strip round every coffer, against the faces. `thickness`: what it stands out, for a crown its projection. `spring`: of a crown,
 * degrees between its back and the face it leans on.
 */
export interface Trim {
    readonly name: string;
    readonly thickness: Ticks;
    readonly top: Ticks; readonly foot: Ticks;
    readonly corners: 'mitered' | 'coped';
    readonly spring?: number;
    /** Where it is spliced: along its back from the start of an edge, the how manieth of its coffer. */
    readonly splices?: readonly TrimSplice[];
}
interface TrimSplice { readonly coffer: number; readonly edge: number; readonly at: Ticks }
