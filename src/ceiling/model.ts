import type { Arrangement, Passing } from '../arrangement/model.ts';
import type { Corner, Direction, Grid, Perimeter, Profile, Room, Side, Spacing, TooMuch } from '../job/model.ts';
import type { Spot } from '../job/outline.ts';
import type { Polygon } from '../plane/polygon.ts';
import type { Given, Source } from '../provenance/source.ts';
import type { Why } from '../provenance/why.ts';
import type { Measure, Tolerance } from '../quantity/measure.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { ShapedWall } from './shape.ts';

/**
 * The ceiling laid out: plain data in ticks. x runs east from the inner face of the west wall, y runs south from the
 * north wall, z runs down from the ceiling. Formulas: section.ts, spacing.ts.
 */

/** A length that follows from others, and why. */
export interface Derived { readonly ticks: Ticks; readonly tolerance: Tolerance; readonly why: Why }

/** A box beam's section; every part undefined where the text does not say enough. */
export interface Section {
    readonly profile: Profile;
    /** Held down for this line: the line's own figure, or the profile's. */
    readonly heldDown?: Given<Measure>;
    /** Widths of the parts as they will be (ripped, or the stock's own). */
    readonly blockingWidth?: Derived;
    readonly bottomWidth?: Derived;
    readonly spacerWidth?: Derived;
    readonly moldingWidth?: Derived;
    readonly sideHeight?: Derived;
    /** Thicknesses of the parts, and the cleat's own section. */
    readonly blockingThickness?: Derived;
    readonly bottomThickness?: Derived;
    readonly spacerThickness?: Derived;
    readonly sideThickness?: Derived;
    readonly trimThickness?: Derived;
    readonly moldingThickness?: Derived;
    readonly cleatThickness?: Derived;
    readonly cleatHeight?: Derived;
    /** Between the backs of the sides. */
    readonly innerWidth?: Derived;
    /** What the bottom goes up into: between the sides, or between their rabbets. Undefined where it lies under them. */
    readonly channelWidth?: Derived;
    readonly outerWidth?: Derived;
    readonly depth?: Derived;
    readonly bottomTop?: Derived;
    readonly cleatTop?: Derived;
    readonly spacerRoom?: Derived;
    /** channelWidth - bottomWidth, in all, not a side. */
    readonly fit?: Derived;
    readonly trimHeight?: Derived;
    /** As the flank has it that has the other side, where the two differ: see flanks.ts. */
    readonly other?: Section;
    /** It is that: its side is held down by what its height leaves of the depth. */
    readonly isOther?: true;
}
/** A section with all that a layout needs. */
export interface WholeSection extends Section {
    readonly innerWidth: Derived; readonly outerWidth: Derived; readonly depth: Derived; readonly bottomWidth: Derived;
    readonly bottomTop: Derived; readonly sideHeight: Derived; readonly blockingWidth: Derived;
    readonly sideThickness: Derived; readonly bottomThickness: Derived; readonly blockingThickness: Derived;
    readonly heldDown: Given<Measure>;
    readonly other?: WholeSection;
}

export interface Line {
    /** '1', '2' … run north-south, counted from the west; 'A', 'B' … run east-west, counted from the north. */
    readonly name: string;
    readonly runs: Direction;
    readonly section: WholeSection;
    /** The flank, as one walks along it, that has the other side of its beam; undefined where both are alike. */
    readonly otherSide?: 'left' | 'right';
    /** The walls or lines that it runs between, from the west or north end. */
    readonly from: string; readonly to: string;
    /** A spot on its center line, and the way it runs in whole numbers. */
    readonly spot: Spot; readonly heading: Spot;
    /** Outer faces across the line: x of west and east face, or y of north and south face; of a line that runs askew, at its west or north end. */
    readonly low: Ticks; readonly high: Ticks;
    /** It stands where the text says, and not where the grid's division would have it. */
    readonly byHand: boolean;
    /** What crosses it, and what ends at it, from its beginning on. */
    readonly passes: readonly Passing[];
    /** Its bottom and blocking are cut at none of these. */
    readonly through: boolean;
    /** Where its bottom begins and ends along its own direction (inside the band), as far as that counts from x and y = 0. */
    readonly start: Ticks; readonly end: Ticks;
    /** Faces of what it ends at. */
    readonly faces: readonly [Ticks, Ticks];
    /** How far these move along the line for every tick across it. */
    readonly leans: readonly [number, number];
    /** Splices of what runs through: positions along the run (centres of joints), each with why it lies there. */
    readonly splices: readonly Splice[];
    /** Where sides that are longer than their boards are, on either flank. */
    readonly sideSplices?: { readonly left: readonly Splice[]; readonly right: readonly Splice[] };
    /** `line B { … }` where there is one, else the `beams` of the grid. */
    readonly at: Source;
}
export interface Splice { readonly at: Ticks; readonly place: string; readonly said?: Source; readonly tape?: Tape }
export interface TrimSplice { readonly coffer: number; readonly edge: number; readonly at: Ticks }
/** Where the tape is hooked on that a splice was said with, along the line, and which way it is pulled. */
export interface Tape { readonly at: number; readonly way: 1 | -1 }

export interface Coffer {
    /** 1, 2, 3 … row by row from the north-west. */
    readonly number: number;
    /** The box round it. */
    readonly west: Ticks; readonly east: Ticks; readonly north: Ticks; readonly south: Ticks;
    readonly outline: Polygon;
    /** Within it, where lines that reach no wall stand in a ring. */
    readonly holes: readonly Polygon[];
}
/** Where two lines cross, or one ends at the other. `flush`: equally deep, and neither dies into the other. */
export interface Crossing<Of = Line> { readonly name: string; readonly ns: Of; readonly ew: Of; readonly flush: boolean }

export interface Band {
    readonly kind: 'band';
    readonly perimeter: Perimeter;
    readonly thickness: Derived;
    readonly height: Derived;
    /** Depth of its lower edge below the ceiling. */
    readonly lowerEdge: Derived;
    /** Where it is spliced, from the wall's west or north end. */
    readonly splices: readonly Splice[];
}
/** Half of a beam along a wall. Its side looks into the room. */
export interface HalfBeam {
    readonly kind: 'half-beam';
    readonly perimeter: Perimeter;
    /** From the wall to the back of its side; its blocking is as wide. */
    readonly width: Derived;
    /** From the wall to the edge of its bottom: the back of its side, its face and the overhang, or what it is let in. */
    readonly bottomWidth: Derived;
    readonly section: WholeSection;
    /** Where its bottom and blocking are spliced. */
    readonly splices: readonly Splice[];
    /** Where the cleat on the wall is, whose boards may be shorter; as its bottom where nothing is said. */
    readonly cleatSplices?: readonly Splice[];
    /** Where sides that are longer than their boards are. */
    readonly sideSplices?: readonly Splice[];
}
/** What runs along each wall, by its name. */
export type Around = Readonly<Record<string, Band | HalfBeam | null>>;

/** One direction's division: along 'east-west' stand lines 1, 2, 3; along 'north-south' A, B. */
export interface Run<Of = Line> {
    readonly along: Direction;
    readonly spacing: Spacing;
    /** Inside the band: from, to. */
    readonly start: Ticks; readonly end: Ticks;
    /** From wall to wall, on the plan. */
    readonly wallEnds: readonly [Ticks, Ticks];
    /** Those of the grid. */
    readonly lines: readonly Of[];
    /** Clear sizes of the coffers along the run, exact. They and the lines' widths add up to end - start. */
    readonly coffers: readonly Ticks[];
    /** The size the equal coffers are cut to (rounded to the job's cut-to), and what is then left over in the run. */
    readonly residue: Residue;
}
export interface Residue {
    /** end - start - lines - coffers cut to their nearest size, before it is placed; may be negative. Of `band` and `spread`: what their coffers leave. */
    readonly ticks: Ticks;
    readonly place: 'outer-coffers' | 'band' | 'spread';
    /** The cut size of every coffer of the run after the residue is placed. */
    readonly cutCoffers: readonly Ticks[];
    /** end - start - lines - cutCoffers: what no coffer takes. Never negative. All of it with `band`, else less than a step of the job's cut-to. */
    readonly rest: Ticks;
}

/** A room whose grid says which lines run through: no other is laid out. */
export type DividedRoom = Room & { readonly grid: Grid & { readonly through: Given<Direction> } };

export interface Ceiling {
    readonly room: DividedRoom;
    /** Clockwise. */
    readonly walls: readonly ShapedWall[];
    /** The box round the room. */
    readonly width: Ticks;   // east-west
    readonly length: Ticks;  // north-south
    /** All walls and lines run along the compass. */
    readonly square: boolean;
    readonly around: Around;
    /** The first band there is, from the north clockwise: what is told of the room in a word. */
    readonly band: Band | null;
    /** The section of the grid's own beams; its trim goes round every coffer. */
    readonly beams?: Section;
    /** Where trim that is longer than its boards is scarfed: along its back from the start of an edge, the how manieth of its coffer. */
    readonly trimSplices?: readonly TrimSplice[];
    readonly inside: { readonly west: Ticks; readonly east: Ticks; readonly north: Ticks; readonly south: Ticks };
    /** Division of the north wall (lines 1, 2 …) and of the east wall (A, B …). */
    readonly across: Run;
    readonly down: Run;
    readonly lines: readonly Line[];      // 1, 2, 3 …, then A, B …
    readonly crossings: readonly Crossing[];
    readonly coffers: readonly Coffer[];
}

/** A ceiling worked out from its plan: every piece with its place, the joints. */
export interface Arranged {
    readonly exact: Arrangement;
    /**
     * The same with every coffer at the size it is cut to: equal pieces that are cut at one stop of the saw shift the lines by a step of
     * the tape here and there, and what is left of a run stands half at either end of it, at the wall. The joints are those of the other.
     */
    readonly asCut: Arrangement;
}

/**
 * Why a line cannot run: it lies along what it should end at, passes the end of it, goes through a wall or into a corner of it, or its
 * end has no whole face to stand against, or a corner of it and another line is outside of the room.
 */
type Astray =
    | { readonly kind: 'grazes' | 'on-a-wall'; readonly to: string; readonly by: Ticks }
    | { readonly kind: 'outside' }
    | { readonly kind: 'sticks-out'; readonly to: string; readonly other: string; readonly by: Ticks }
    | { readonly kind: 'crowds' | 'shortens'; readonly to: string; readonly leaves: Ticks; readonly wants: Ticks }
    | { readonly kind: 'never-gets-there' | 'misses' | 'leaves-the-room'; readonly to: string }
    | { readonly kind: 'in-the-way'; readonly on: string; readonly other: string; readonly by: Ticks }
    | { readonly kind: 'deeper-than-its-end'; readonly to: string; readonly deep: Ticks; readonly has: Ticks };

/** Why a room could not be laid out, or only by bending it. Rules turn these into findings; layout itself reports nothing. */
export type Trouble =
    | { readonly kind: 'grid-doesnt-close'; readonly along: Direction; readonly wanted: Ticks; readonly has: Ticks; readonly at: Source; readonly parts: string;
        /** How many coffers go in at a size that looks like one, and that size. Undefined where none do. */
        readonly fits?: { readonly coffers: number; readonly size: Ticks } }
    | { readonly kind: 'no-coffer-size-fits'; readonly along: Direction; readonly at: Source; readonly nearest: readonly { readonly coffers: number; readonly size: Ticks }[] }
    | { readonly kind: 'not-rectangular'; readonly walls: readonly [string, string]; readonly a: Ticks; readonly b: Ticks; readonly at: Source; readonly other: Source }
    | { readonly kind: 'out-of-square'; readonly measured: Ticks; readonly square: Ticks; readonly at: Source }
    /**
     * Where a tape comes out that has gone round the room, seen from where it began: x to the east, y to the south. `stretched`: walls
     * that were taken longer or shorter for it.
     */
    | { readonly kind: 'tape-doesnt-close'; readonly gap: Spot; readonly stretched: readonly { readonly wall: string; readonly to: Ticks }[]; readonly at: Source }
    /** A diagonal, and what it is by the walls and the diagonal before it. */
    | { readonly kind: 'diagonal-differs'; readonly from: Corner; readonly to: Corner; readonly measured: Ticks; readonly is: Ticks; readonly at: Source }
    | { readonly kind: 'no-such-triangle'; readonly from: Corner; readonly to: Corner; readonly measured: Ticks; readonly walls: readonly [string, string]; readonly a: Ticks; readonly b: Ticks; readonly at: Source }
    | { readonly kind: 'no-room'; readonly why: 'too-few-lengths' | 'runs-backwards' | 'crosses-itself' | 'counterclockwise'; readonly walls: readonly string[]; readonly at: Source }
    | { readonly kind: 'lines-overlap'; readonly lines: readonly [string, string]; readonly by: Ticks; readonly at: Source }
    | { readonly kind: 'unknown-line'; readonly name: string; readonly has: readonly string[]; readonly at: Source }
    /** What a line is said to run between or stand off, or what a crossing is said of, is not there; `has`: what is. */
    | { readonly kind: 'unknown-meeting'; readonly of: string; readonly name: string; readonly has: readonly string[]; readonly at: Source }
    /** A line that cannot run as it is said. */
    | { readonly kind: 'line-goes-nowhere'; readonly line: string; readonly why: Astray; readonly at: Source }
    | { readonly kind: 'too-many-coffers'; readonly within: 'one direction' | 'one room'; readonly count: number; readonly most: number; readonly at: Source }
    | { readonly kind: 'too-much-in-file'; readonly at: Source } & TooMuch
    /**
     * A line is said to have the other side of its beam where it has no flank; `has`: where it has them, undefined where its beam has but one kind of side. Or
     * a half beam is said to show the other side of a beam that has none.
     */
    | { readonly kind: 'no-other-side'; readonly of: 'line'; readonly line: string; readonly runs: Direction; readonly has?: readonly [Side, Side]; readonly said: Side;
        readonly at: Source }
    | { readonly kind: 'no-other-side'; readonly of: 'half-beam'; readonly at: Source }
    | { readonly kind: 'bad-count'; readonly value: number; readonly at: Source; readonly what: string }
    | { readonly kind: 'not-positive'; readonly what: string; readonly ticks: Ticks; readonly at: Source }
    | { readonly kind: 'band-too-high'; readonly height: Ticks; readonly room: Ticks; readonly at: Source }
    /** `because`: why it cannot be; not said: it could be, and is not computed yet. */
    | { readonly kind: 'not-supported'; readonly what: string; readonly because?: string; readonly instead: string; readonly at: Source };

/** `sections` by the profile's key, with the line's own held-down after it where a line has one: see lines.ts. */
export interface Layout {
    readonly room: Room; readonly sections: ReadonlyMap<string, Section>; readonly ceiling?: Ceiling; readonly troubles: readonly Trouble[];
}
/** Of a room that could be laid out. */
export type LaidOut = Layout & { readonly ceiling: Ceiling };
