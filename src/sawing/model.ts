import type { JobSettings, Rabbet, Stock } from '../job/model.ts';
import type { BoardFrom } from '../cutting/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { EndCut, FlatCut, Piece } from '../takeoff/model.ts';
import type { Opened } from '../takeoff/work.ts';

/** Everything that is done at the saw, in its order, and every board as it lies there. Lengths in ticks. */
export interface SawOrder {
    readonly job: JobSettings;
    readonly boards: readonly LaidBoard[];
    /** Numbered from 1. A step may be done when those before it are. */
    readonly steps: readonly Step[];
    readonly setUps: SetUps;
    readonly cautions: readonly Caution[];
}

/**
 * A board on the saw's table, seen from above, the tape hooked on its left end: the back of the pieces up, the groove edge
 * against the fence. What is mitered at its left lies with the miter on the left.
 */
export interface LaidBoard {
    /** `poplar-1x6 #3`: names it among all boards of the job. */
    readonly name: string;
    readonly stock: Stock;
    readonly number: number;
    readonly length: Ticks;
    /** As long as its strips are: the board's length, or a sheet's width where it is ripped across its length. */
    readonly along: Ticks;
    /** Across them: its stock's width, or its own where it is narrower; undefined where nobody says. */
    readonly across?: Ticks;
    readonly from: BoardFrom;
    /** One of full width, then the strips of its sections or of the whole board, side by side. */
    readonly strips: readonly LaidStrip[];
    /** What is cut off to be ripped by itself, by number; empty where the whole board is ripped, or nothing is. */
    readonly sections: readonly LaidSection[];
    /** Across the board, what is left beside the strips after the last kerf, at the widest. 0 where it is not ripped. */
    readonly besideStrips: Ticks;
}
/** Readings of the tape at the two ends of a section, as it lies in the board. The kerf lies right of `to`. */
export interface LaidSection { readonly number: number; readonly from: Ticks; readonly to: Ticks }
export interface LaidStrip {
    /** 1, 2, 3 … within the board, through all its sections; what is cut in the whole width comes last. */
    readonly number: number;
    readonly rippedTo?: Ticks;
    /** The number of the section it is ripped from: its tape is hooked on the section's left end. */
    readonly section?: number;
    /** How long the board or section is that it lies in. */
    readonly along: Ticks;
    /** Reading of the first mark: what is left of it is cut off, its kerf included. 0 in a section, which has no raw end. */
    readonly trim: Ticks;
    /** From the hooked end on, which is the order they are cut in. */
    readonly pieces: readonly LaidPiece[];
    /** What the plan promises to be left to use; it may be a little more. */
    readonly offcut: Ticks;
    readonly kept: boolean;
    /**
     * From the last cut's kerf to the raw end, or to the section's; at least the offcut and the trim of that end. Negative where that kerf falls
     * into the trim, or needs no cut.
     */
    readonly rest: Ticks;
}
/** A piece's blank: cut square, its miters come later. Or what a piece takes of its board that is cut to its miters there. */
export interface LaidPiece {
    readonly piece: Piece;
    /** Readings of the tape at its two ends. The kerf lies right of `to`. */
    readonly from: Ticks; readonly to: Ticks;
    /** Cut straight from the board at a stop for miters; it lies behind all that is cut square. */
    readonly once?: true;
    /** As it lies: left and right end, see `endsFromTheLeft`. */
    readonly ends: readonly [EndCut, EndCut];
}

export interface BoardRef { readonly board: LaidBoard; readonly strips: readonly number[] }

export type Step = RipStep | CrosscutStep | BlockStep | RabbetStep | EaseStep | MiterStep | CopeStep | ShapeStep | KerfStep | SlotStep | HalveStep | PocketStep;
interface Numbered { readonly number: number }

/** One setting of the rip fence. */
export interface RipStep extends Numbered {
    readonly do: 'rip';
    readonly width: Ticks;
    /** The name the job gives this setting. */
    readonly fence?: string;
    /**
     * `boards`: whole, before they are crosscut; `sections`: once they are cut off their boards; `on edge`: the strips of either once more, in
     * their other direction; `pieces`: after they are cut to length.
     */
    readonly what: 'boards' | 'sections' | 'on edge' | 'pieces';
    readonly boards: readonly BoardRef[];
    readonly pieces: readonly Piece[];
}

/** One setting of the stop, square, over all boards that hold a piece or section of this length. */
export interface CrosscutStep extends Numbered {
    readonly do: 'crosscut';
    /** `boards`: boards, and strips of whole boards; `strips`: those of sections, once these are ripped. */
    readonly of: 'boards' | 'strips';
    readonly sections: readonly SectionRef[];
    /** From the blade to the stop: the blank's length. */
    readonly stop: Ticks;
    /** Longer than a stop reaches: measured with the tape. */
    readonly by: 'stop' | 'tape';
    readonly takes: readonly Take[];
    /** Blanks of mitered pieces are cut so much longer than their long points. */
    readonly over: Ticks;
}
export interface SectionRef { readonly board: LaidBoard; readonly section: LaidSection }
/** What one board gives at this setting. Its pieces that were longer are already cut off. */
export interface Take { readonly board: LaidBoard; readonly strip: LaidStrip; readonly pieces: readonly LaidPiece[] }

/** Test pieces and gauge blocks, out of what is left. */
export interface BlockStep extends Numbered { readonly do: 'blocks'; readonly blocks: readonly Block[] }
export interface Block {
    readonly kind: 'cleat gauge' | 'miter test' | 'rabbet test' | 'slot test' | 'bend trial' | 'joint block';
    readonly stock: Stock;
    readonly count: number;
    /** Of each. */
    readonly length: Ticks;
    /** The angle, the biscuit … that it is for, in words. */
    readonly for: string;
    /** The offcuts they come out of, one for each; fewer than `count` where the plan leaves no more that are as long. */
    readonly out: readonly LaidBoard[];
}

/** How often a batch is gauged, and what is too much. */
export interface Gauging { readonly every: number; readonly warn: Ticks; readonly reject: Ticks }
interface Machining extends Numbered {
    readonly pieces: readonly Piece[];
    /** Boards that hold nothing else: these may be run whole, before they are crosscut. */
    readonly whole: readonly LaidBoard[];
    /** Boards that hold some of the pieces still: what is left of these, or of their strips, is run in one. */
    readonly uncut: readonly LaidBoard[];
    /** Length of the run over all pieces. */
    readonly run: Ticks;
    readonly passes: number;
}
export interface RabbetStep extends Machining {
    readonly do: 'rabbet'; readonly width: Ticks; readonly height: Ticks; readonly edge: Rabbet['edge']; readonly face: Rabbet['face']; readonly gauging: Gauging;
}
export interface EaseStep extends Machining { readonly do: 'ease'; readonly by: Ticks }

/** One angle of the saw, from square: first the ends of blanks that need no stop, then a stop for every length, the long ones first. */
export interface MiterStep extends Numbered {
    readonly do: 'miter';
    readonly degrees: number;
    /** Of a crown, lying flat: what the saw is turned and tilted to for that corner. */
    readonly flat?: FlatCut;
    readonly cuts: readonly MiterCut[];
}
export interface MiterCut {
    /** Long point to long point or to the square end. Undefined: to the corner of the blank, the other end follows. */
    readonly stop?: Ticks;
    /** On the piece as it lies back up with the groove edge at the fence. */
    readonly end: 'left' | 'right';
    /** Where the long point comes out: up, on the back, or under it, on the face; of what is cut flat on the edge at the fence, or on that towards you. */
    readonly long: 'back' | 'face';
    /** Cut as it lies flat, the saw turned across its width; else through its thickness, the saw tilted or the piece on edge. */
    readonly flat: boolean;
    /** `either` where nothing tells the ends apart. */
    readonly hand: 'left' | 'right' | 'both ends' | 'either';
    readonly pieces: readonly Piece[];
    /** Both ends, straight from these boards, which hold them at the end that is being cut: first one end there, then the other at the stop. */
    readonly takes?: readonly Take[];
}
/** Ends that are cut at their angle and then sawn back along the line of their profile, so that they fit over the face of the piece they meet. */
export interface CopeStep extends Numbered { readonly do: 'cope'; readonly ends: number; readonly pieces: readonly Piece[] }
/** Panels that are no rectangles, cut to lines from corner to corner; those of one shape together. */
export interface ShapeStep extends Numbered { readonly do: 'shape'; readonly shapes: readonly Shape[]; readonly pieces: readonly Piece[] }
export interface Shape {
    /** So far along from the first of the ends that `from` names, and in from the edge: see Work. */
    readonly corners: readonly (readonly [along: Ticks, across: Ticks])[];
    readonly from: readonly [string, string];
    readonly pieces: readonly Piece[];
}
export interface SlotStep extends Numbered {
    readonly do: 'slots'; readonly size: string;
    /** Slots in all: a biscuit sits in two. */
    readonly count: number;
    /** Half the thickness of the pieces: the height of the joiner's fence. */
    readonly fence: Ticks;
    readonly pieces: readonly Piece[];
    /** Those whose slots are opened to the back, and how; those whose slots are so much wider towards it. */
    readonly opened: readonly (Opened & { readonly pieces: readonly Piece[] })[];
    readonly wider: readonly { readonly by: Ticks; readonly pieces: readonly Piece[] }[];
}
/** Kerfs across the back of pieces that are bowed on their way in: from the middle of each to both sides, all at one depth of the saw. */
export interface KerfStep extends Numbered {
    readonly do: 'kerfs';
    /** On each; from center to center. */
    readonly count: number; readonly apart: Ticks; readonly depth: Ticks;
    readonly pieces: readonly Piece[];
}
/** Pieces cut in two in their middle, and relieved there on the back: what is pushed straight like a knee. Their blanks are longer by what the cut takes. */
export interface HalveStep extends Numbered {
    readonly do: 'halve';
    /** A half: to it one half is cut, then the other. */
    readonly stop: Ticks;
    readonly relieved: Ticks;
    readonly pieces: readonly Piece[];
}
export interface PocketStep extends Numbered { readonly do: 'pocket holes'; readonly each: number; readonly pieces: readonly Piece[] }

export interface SetUps {
    readonly fences: number;
    readonly stops: number;
    readonly angles: number;
    /** Stops set again at the miter saw's angles. */
    readonly miterStops: number;
    readonly machines: number;
    /** All of the above. The pieces alone decide it, whatever boards they come from. */
    readonly total: number;
    /** How often a board is taken up at a stop: what depends on the plan, and what is least among plans of equal cost. */
    readonly pickUps: number;
}

export interface Caution { readonly at: Step['do'] | 'all'; readonly words: string }
