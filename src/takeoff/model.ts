import type { Compass, Cut } from '../arrangement/model.ts';
import type { Stock } from '../job/model.ts';
import type { Part } from '../job/part.ts';
import type { Point } from '../plane/point.ts';
import type { Source } from '../provenance/source.ts';
import type { Why } from '../provenance/why.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Work } from './work.ts';

export { PARTS, type Part } from '../job/part.ts';
export type { Compass, Cut } from '../arrangement/model.ts';

/** One piece of wood. Lengths in ticks, exact; `cutFace`, `cutBack` and `cutOverall` are rounded once, down to the job's cut-to. */
export interface Piece {
    /** Stable under edits elsewhere: room, line or coffer, bay, part, side. See ids.ts. */
    readonly id: string;
    readonly room: string;
    readonly part: Part;
    /** The line it belongs to ('2', 'B'), or null. */
    readonly line: string | null;
    /** The bay of the line, counted from its west or north end, or null where it runs through or belongs to no line. */
    readonly bay: number | null;
    readonly coffer: number | null;
    /** The side of the line, coffer or room it stands on. */
    readonly on: string | null;
    readonly stock: Stock;
    /**
     * Its two long edges. Of a side and of a trim the visible face and the hidden back; of a band the edges at the room and at the wall; of what
     * lies in a beam the edge to the east or south, and that to the west or north. Equal where both ends are square.
     */
    readonly face: Ticks; readonly back: Ticks;
    readonly cutFace: Ticks; readonly cutBack: Ticks;
    /** What it takes of a board: from the first of its corners to the last. More than either edge where one end leans out and the other in. */
    readonly overall: Ticks; readonly cutOverall: Ticks;
    /** West or north end first. */
    readonly ends: readonly [EndCut, EndCut];
    /** The line or wall that it meets at each of them; null at a splice, and of a spacer. */
    readonly meets: readonly [string | null, string | null];
    /** The mitered end, seen face towards you, groove edge down; null where it does not matter. */
    readonly hand: 'left' | 'right' | null;
    /** Ripped width and thickness as it stands in the ceiling; `ripped` where it is narrower than its stock. */
    readonly width: Ticks; readonly thickness: Ticks; readonly ripped: boolean;
    /** What its edge at the wall is left wider than it stands, to be scribed. */
    readonly scribe?: Ticks;
    /** It lies flat, as bottoms and blocking always do: a molding under the beam. */
    readonly lies?: boolean | undefined;
    /** Of a crown, which leans: what it reaches out and down as it stands. */
    readonly stands?: { readonly out: Ticks; readonly down: Ticks };
    /** Rip, rabbet, eased edges, slots …, in the order they are done. */
    readonly work: readonly Work[];
    /** The same in words. */
    readonly machining: readonly string[];
    /** Where it goes, in words: "line B, bay 3, north side". */
    readonly where: string;
    readonly why: Why;
    readonly source: Source;
    /** Corners on the plan: along its back (its long points; of a cleat the edge at its side), the end to the west or north first, then back along its face. */
    readonly corners: Corners;
    /** Of a panel that is no rectangle: its own corners on the plan, clockwise; `corners` are those of the rectangle that it is cut from. */
    readonly outline?: readonly Point[];
    /** Place in the ceiling: a box in x, y, z (down), of the piece's full extent. */
    readonly box: Box;
}
export interface EndCut {
    /** `miter`: in a corner with another piece; `angled`: off square along what it ends at; `coped`: cut at its angle first, then to the profile it meets. */
    readonly cut: 'square' | 'miter' | 'angled' | 'coped';
    /** As the saw reads it, from square; less than nothing where the face is the longer at this end. Not said of a square one. */
    readonly degrees?: number;
    /** Which of its two long edges is the longer at this end. */
    readonly longer?: Compass;
    /** How it meets what it ends at; not said of what meets nothing. */
    readonly how?: Cut;
    /** Of a crown: what the saw is set to where it lies flat on its table. */
    readonly flat?: FlatCut;
}
export interface FlatCut { readonly miter: number; readonly bevel: number }
export type Corners = readonly [Point, Point, Point, Point];
export interface Box { readonly west: Ticks; readonly east: Ticks; readonly north: Ticks; readonly south: Ticks; readonly top: Ticks; readonly foot: Ticks }

/** Where two pieces meet end to edge or end to end. */
export interface Joint {
    readonly kind: 'butt' | 'corner' | 'splice' | 'band-corner' | 'trim-corner' | 'band-splice' | 'side-splice' | 'trim-splice';
    readonly at: string;
    readonly pieces: readonly [string, string];
    readonly biscuits: { readonly count: number; readonly size: string } | null;
}

/** Screws, nails, biscuits, glue, filler, caulk: a count with the rule it was counted by. */
export interface Consumable {
    readonly kind: 'screws' | 'nails' | 'biscuits' | 'glue' | 'filler' | 'caulk';
    readonly what: string;
    readonly count: number;
    readonly unit: string;
    /** The rule in words, with its figures. */
    readonly by: string;
    readonly basis: string;
}
export interface TakeOff {
    readonly room: string;
    readonly pieces: readonly Piece[]; readonly joints: readonly Joint[]; readonly consumables: readonly Consumable[];
    /** Pieces whose figures would be wrong, for something the text says and nothing computes: they stand in no list, and in no count. */
    readonly leftOut: readonly Piece[];
}
