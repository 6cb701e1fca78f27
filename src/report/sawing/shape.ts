import type { BoardFrom } from '../../cutting/model.ts';
import type { Block, SetUps } from '../../sawing/index.ts';
import type { EndCut, FlatCut } from '../../takeoff/model.ts';
import type { Count, FromOne, LengthJson } from '../amounts-json.ts';
import type { HouseHead } from '../house-json.ts';
import type { StandingJson } from '../standing-json.ts';

/**
 * What `cofferwright saw --format json` prints.
 * @title The order at the saw
 */
export interface SawJson {
    readonly version: 1;
    readonly kind: 'cofferwright.saw';
    readonly standing: StandingJson;
    /** Rooms under the same job settings are one house. */
    readonly houses: readonly House[];
}

interface House extends HouseHead {
    /** The steps are meant; the readings by board say the same, for laying out and for checking. */
    readonly meant: 'by setting';
    /** `total` follows from the pieces alone; `pickUps`, how often boards are taken up at a stop, from the plan. */
    readonly setUps: { readonly [Name in keyof SetUps]: Count };
    /** In the order of the saw, numbered from 1. */
    readonly steps: readonly Step[];
    readonly boards: readonly Board[];
    /** Reminders; makers' manuals and local rules come first. */
    readonly cautions: readonly { readonly at: string; readonly words: string }[];
}

// ---------------------------------------------------------------- steps

type Step = Rip | Crosscut | Blocks | Rabbet | Ease | Miter | Cope | ShapeCuts | KerfCuts | Slots | Halve | PocketHoles;
interface Numbered { readonly number: FromOne; readonly stage: string }
interface OnPieces extends Numbered {
    /** Ids of pieces in the cut list. */
    readonly pieces: readonly string[];
}
interface Run extends OnPieces {
    readonly passes: FromOne;
    readonly run: LengthJson;
    /** Boards that hold nothing else and may be run whole before they are crosscut. */
    readonly wholeBoards: readonly string[];
    /** Boards that hold some of the pieces still, to be cut straight to their miters afterwards: what is left of these is run in one. */
    readonly uncutBoards?: readonly string[];
}

/** One setting of the rip fence: whole boards, sections that are cut off, the strips of either once more on edge, or pieces that are cut to length. */
interface Rip extends OnPieces {
    readonly do: 'rip';
    readonly what: 'boards' | 'sections' | 'on edge' | 'pieces';
    readonly width: LengthJson;
    /** The name the job gives this setting. */
    readonly fence: string | null;
    readonly boards: readonly { readonly board: string; readonly strips: readonly FromOne[] }[];
}

/** One setting of the stop, square, over all boards that hold a piece or section of this length. */
interface Crosscut extends Numbered {
    readonly do: 'crosscut';
    /** boards: boards, and strips of whole boards; strips: those of sections, once these are ripped. */
    readonly of?: 'boards' | 'strips';
    /** Sections that are cut off at this setting, to be ripped. */
    readonly sections?: readonly { readonly board: string; readonly section: FromOne }[];
    readonly stop: LengthJson;
    readonly by: 'stop' | 'tape';
    /** What blanks of mitered pieces are longer than their long points. */
    readonly over: LengthJson;
    readonly takes: readonly Take[];
}
interface Take {
    readonly board: string;
    readonly strip: FromOne;
    /** Ids of pieces in the cut list. */
    readonly pieces: readonly string[];
}

/** Test pieces and gauge blocks. */
interface Blocks extends Numbered { readonly do: 'blocks'; readonly blocks: readonly OneBlock[] }
interface OneBlock {
    readonly kind: Block['kind'];
    readonly stock: string;
    readonly count: FromOne;
    readonly length: LengthJson;
    readonly for: string;
    /** The boards whose offcuts they come out of; fewer than `count` where no more offcuts are as long. */
    readonly boards: readonly string[];
}

/** A rabbet along the whole piece. */
interface Rabbet extends Run {
    readonly do: 'rabbet';
    readonly width: LengthJson;
    readonly height: LengthJson;
    readonly edge: 'lower-back' | 'lower-front' | 'upper-back' | 'upper-front';
    /** How often a piece is gauged, and what is too much. */
    readonly gauging: { readonly every: FromOne; readonly warn: LengthJson; readonly reject: LengthJson };
}

/** Both back edges eased. */
interface Ease extends Run { readonly do: 'ease'; readonly by: LengthJson }

/** One angle of the saw. */
interface Miter extends Numbered {
    readonly do: 'miter';
    /** From square, through its thickness as it stands, to a tenth of a degree: ends that differ by less are cut at one setting. */
    readonly degrees: number;
    /** Of a crown, lying flat: what the saw is turned to, and tilted. */
    readonly flat?: FlatCut;
    readonly cuts: readonly Cut[];
}
interface Cut {
    /** To the long point; null: to the corner of the blank, the other end follows. */
    readonly stop: LengthJson | null;
    /** As it lies: back up, groove edge at the fence. */
    readonly end: 'left' | 'right';
    /** Where the long point comes out: on the back, up, or on the face, underneath; of what is cut flat at the edge at the fence, or at that towards you. */
    readonly long?: 'back' | 'face';
    /** Cut as it lies, the saw turned across its width. */
    readonly flat?: boolean;
    readonly hand: 'left' | 'right' | 'both ends' | 'either';
    /** Ids of pieces in the cut list. */
    readonly pieces: readonly string[];
    /** Both ends, straight from these boards: first one, where the last cut has left it, then the other at the stop. Empty: of blanks, cut square before. */
    readonly takes?: readonly Take[];
}

/** Ends that are coped once they are cut at their angle. */
interface Cope extends OnPieces { readonly do: 'cope'; readonly ends: Count }

/** Panels that are no rectangles, cut to lines from corner to corner. */
interface ShapeCuts extends OnPieces { readonly do: 'shape'; readonly shapes: readonly PanelShape[] }
interface PanelShape {
    /** The end that corners are measured from along a panel, and the edge across it: "west", "north". */
    readonly from: readonly string[];
    /** In their order round it. */
    readonly corners: readonly { readonly along: LengthJson; readonly across: LengthJson }[];
    /** Ids of pieces in the cut list. */
    readonly pieces: readonly string[];
}

/** Slots for biscuits. */
interface Slots extends OnPieces {
    readonly do: 'slots'; readonly size: string; readonly count: Count; readonly fence: LengthJson;
    /** Those that are opened to the back, so that the piece goes straight up over the biscuits: so long and deep, with so much wood left at the face. */
    readonly opened?: readonly { readonly long: LengthJson; readonly deep: LengthJson; readonly leaves: LengthJson; readonly pieces: readonly string[] }[];
    /** Those that are so much wider towards the back. */
    readonly wider?: readonly { readonly by: LengthJson; readonly pieces: readonly string[] }[];
}

/** Kerfs across the backs, from the middle of each piece to both sides. */
interface KerfCuts extends OnPieces { readonly do: 'kerfs'; readonly count: FromOne; readonly apart: LengthJson; readonly depth: LengthJson }

/** Cut in two in the middle, the stop set to a half, the back of the joint relieved. */
interface Halve extends OnPieces { readonly do: 'halve'; readonly stop: LengthJson; readonly relieved: LengthJson }

/** Pocket holes. */
interface PocketHoles extends OnPieces { readonly do: 'pocket holes'; readonly each: FromOne }

// ---------------------------------------------------------------- boards

/** As it lies at the saw, the tape hooked on its left end. */
interface Board {
    readonly name: string;
    readonly stock: string;
    readonly number: FromOne;
    readonly length: LengthJson;
    /** As long as its strips are: a sheet that is ripped across its length has strips as long as it is wide. */
    readonly along: LengthJson;
    readonly from: BoardFrom;
    /** Across the board, what is left beside the strips. */
    readonly besideStrips: LengthJson;
    /** What is cut off to be ripped by itself: readings of the tape. */
    readonly sections?: readonly { readonly number: FromOne; readonly from: LengthJson; readonly to: LengthJson }[];
    readonly strips: readonly Strip[];
}

interface Strip {
    /** Within the board: ripped ones from 1 on through all its sections, what is cut in its whole width last. */
    readonly number: FromOne;
    readonly rippedTo: LengthJson | null;
    /** The section it is ripped from, whose left end its tape is hooked on; null: it lies over the whole length. */
    readonly section?: FromOne | null;
    /** Reading of the first mark. */
    readonly trim: LengthJson;
    /** From the hooked end on, in the order they are cut. */
    readonly pieces: readonly OnePiece[];
    /** Promised by the plan; `cut` rounded down. */
    readonly offcut: LengthJson;
    readonly kept: boolean;
    /** From the last kerf to the raw end; negative where that kerf falls into the end trim. */
    readonly rest: LengthJson;
}

interface OnePiece {
    readonly piece: string;
    /** Readings of a tape hooked on the left end; the kerf lies right of `to`. */
    readonly from: LengthJson;
    readonly to: LengthJson;
    readonly back: LengthJson;
    readonly face: LengthJson;
    /** What it takes of the board, from its first corner to its last. */
    readonly overall?: LengthJson;
    /** Left and right as it lies. */
    readonly ends: readonly [End, End];
    /** The end with the miter, the face towards you and the groove edge down; null where it does not matter. */
    readonly hand: 'left' | 'right' | null;
    /** Where the tape is hooked to measure the finished piece. */
    readonly measure: Measure;
}

interface End {
    readonly cut: EndCut['cut'];
    /** From square, as the saw reads it; less than 0 where the face is the longer at this end. Not said of a square end. */
    readonly degrees?: number;
}

interface Measure {
    readonly hook: 'either end' | 'square end' | 'long point';
    /** The end that is hooked, as it lies. */
    readonly end: 'left' | 'right' | null;
    readonly along: 'face or back' | 'back' | 'face';
    readonly edge: 'any' | 'upper' | 'lower';
}
