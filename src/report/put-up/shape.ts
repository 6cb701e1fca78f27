import type { Count, FromOne, LengthJson } from '../amounts-json.ts';
import type { RoomHead } from '../house-json.ts';
import type { StandingJson } from '../standing-json.ts';

/**
 * What `cofferwright put-up --format json` prints: the steps in which each room's ceiling is put up, the way of every piece to its place, and what is
 * measured at the first bay.
 * @title Putting up
 */
export interface PutUpJson {
    readonly version: 1;
    readonly kind: 'cofferwright.put-up';
    readonly standing: StandingJson;
    readonly rooms: readonly PutUpRoomJson[];
}

export interface PutUpRoomJson extends RoomHead {
    readonly steps: readonly PutUpStepJson[];
    /**
     * Minutes of one person by the day: of steps that go on the next day what is done of them on this one; `layout`, `finish`: with setting out, with filling
     * and sanding. Empty where it is not known how many people work.
     */
    readonly byDay?: readonly {
        readonly day: FromOne; readonly minutes: number; readonly steps: readonly FromOne[]; readonly layout: boolean; readonly finish: boolean;
    }[];
    /** What others finish first, as the text says it. */
    readonly waits?: readonly WaitJson[];
    /** The day before which nothing of the room is begun, as the text says it; null where it says none. */
    readonly fromDay?: FromOne | null;
    readonly firstBay: {
        readonly coffer: FromOne;
        /** What is cut for it, by names of the cut list. */
        readonly pieces: readonly string[];
        readonly measures: readonly MeasureJson[];
    } | null;
    /** Pieces each of which waits for the one before it, the first for the last: none of them can be put up. Empty where there is an order. */
    readonly cycle: readonly string[];
    /** What cannot be put up in any order. */
    readonly stuck: readonly string[];
    /** What has to be there before what. */
    readonly before: readonly { readonly first: string; readonly then: string; readonly why: 'carries' | 'in-the-way' | 'runs-through' | 'custom' | 'spliced' | 'ends-at' | 'last' | 'said' }[];
    /**
     * Steps, by their numbers, that several crews keep in this order besides what has to be there before what: since a piece of the second would be in the
     * way of one of the first; comes onto its biscuits; or since the first bay is measured before. Empty where one crew does all.
     */
    readonly inTurn?: readonly { readonly first: FromOne; readonly then: FromOne; readonly why: 'in-the-way' | 'biscuits' | 'first-bay' }[];
    /** A choice of what runs through that leaves fewer closing pieces; null where there is none. */
    readonly otherChoice?: OtherChoiceJson | null;
    /** What bottoms that are cut long do along their rows. */
    readonly pressed?: readonly PressedJson[];
    /** Minutes of one person for setting out before, and for filling and sanding after; null where nothing is timed. */
    readonly layoutMinutes: number | null;
    readonly finishMinutes: number | null;
    /**
     * From the middle of a step to that of the next. `atLeast`: no order of these steps is shorter, with each kind of work in its turn: the same as
     * `distance` where that is proved to be the least; null where it was not worked out, as for several crews.
     */
    readonly ladder: { readonly moves: Count; readonly distance: LengthJson; readonly atLeast?: LengthJson | null };
}

/** Another room that is done first, or the work of another trade. */
export interface WaitJson {
    readonly kind: 'room' | 'trade';
    /** The name of the room, or the words of the text. */
    readonly name: string;
    /** What waits for it, by the names of the text; empty: all of the room. */
    readonly before: readonly string[];
    /** The day on which they are done, by the count of this room's days; null where nobody knows: then the days do not reckon with it. */
    readonly untilDay: FromOne | null;
    /** Rooms that wait for each other: their names from this one on and back to it. Null where they do not. */
    readonly circle: readonly string[] | null;
}

export interface PressedJson {
    readonly lines: readonly string[];
    /** How much longer than its opening each bottom is cut, and whether the text says so; else what it would do. */
    readonly press: LengthJson; readonly said: boolean;
    /** Pieces of the row, and those of them that stand between what does not give way. */
    readonly pieces: Count; readonly between: Count;
    /** What these press in all, and what of that the tape leaves. */
    readonly sum: LengthJson; readonly asCut: LengthJson;
    /** Where nothing gives way: how far the last one is bowed in its middle, once it is pressed by more than `straightUpTo`. */
    readonly bows: { readonly length: LengthJson; readonly by: LengthJson; readonly straightUpTo?: LengthJson };
    /** Pounds that it presses with when it begins to bow; null where the strength of its wood is not known. */
    readonly force?: number | null;
    /** Or how far the outermost lines that the row meets are pushed off, each. */
    readonly pushes: { readonly lines: readonly string[]; readonly by: LengthJson } | null;
}

/** Each figure as it is and as it would be. */
export interface OtherChoiceJson {
    /** Which line runs through where, in words. */
    readonly words: string;
    readonly closing: { readonly now: Count; readonly then: Count };
    /** Whether it is proved that no choice leaves fewer. */
    readonly proved: boolean;
    readonly longest: { readonly now: LengthJson; readonly then: LengthJson };
    readonly splices: { readonly now: Count; readonly then: Count };
    /** Of a plan made at once for the room alone. */
    readonly boards: { readonly now: Count; readonly then: Count };
    /** Of one person; null where nothing is timed. */
    readonly minutes: { readonly now: number; readonly then: number } | null;
}

export interface PutUpStepJson {
    readonly number: FromOne;
    readonly kind: 'panel' | 'blocking' | 'spacers' | 'first-bay' | 'sides' | 'bottoms' | 'moldings' | 'band' | 'trim';
    /** What it is about: a line, a coffer, a wall. */
    readonly of: { readonly kind: 'line' | 'coffer' | 'wall'; readonly name: string };
    readonly people: FromOne;
    /** Of one person; null where it is not timed. */
    readonly minutes: number | null;
    /** The days on which it begins and ends, from 1; null where it is not known how many people work. */
    readonly days: { readonly first: FromOne; readonly last: FromOne } | null;
    /** Which of the crews does it, from 1; null likewise. */
    readonly crew: FromOne | null;
    /** What others finish before it, where not all of the room waits for that: names of `waits`. */
    readonly after?: readonly string[];
    readonly pieces: readonly PlacingJson[];
    readonly fasteners: readonly { readonly what: string; readonly count: Count }[];
    /** Joints that are closed in this step. */
    readonly joints: readonly { readonly kind: string; readonly at: string; readonly pieces: readonly [string, string] }[];
}

export interface PlacingJson {
    /** Its name in the cut list. */
    readonly id: string;
    /** It is up by now, as the text says. */
    readonly isUp: boolean;
    /**
     * `up`: lifted straight up. `beside`: lifted beside its place, as far as `east` and `south` say, and pushed there. `over`: a closing piece, which
     * biscuits at its ends keep from both: it goes in by `by`. `around`: round what hangs in the way of a straight lift, as `moves` say. `none`: no way
     * was found.
     */
    readonly way: 'up' | 'beside' | 'around' | 'over' | 'none';
    readonly east: LengthJson | null;
    readonly south: LengthJson | null;
    /** The way in of a closing piece, and that of a run that is joined before it goes up. */
    readonly by?: 'join-first' | 'open-slots' | 'swing' | 'leave-out' | 'spring' | 'splice' | 'knee' | 'kerfs' | null;
    /** Its moves one after the other; the last ends at its place. Empty where no way was found. */
    readonly moves?: readonly MoveJson[];
    /** What stands in the way of a straight lift. */
    readonly blockedBy: readonly string[];
}

/** `lift`: straight up. `push`: level. `turn`: level, straight to how it lies. `swing`: its low end up. `straighten`: what is bent, or in two halves. */
export interface MoveJson { readonly kind: 'lift' | 'push' | 'turn' | 'swing' | 'straighten'; readonly from: PoseJson; readonly to: PoseJson }

/** How a piece stands, against how it stands in the end. */
export interface PoseJson {
    readonly east: LengthJson; readonly south: LengthJson; readonly below: LengthJson;
    /**
     * `turned`: level, turned on the plan about its middle, from east towards south. `tipped`: one end hangs lower, the other is where it belongs.
     * `leaning`: the same, but held off at its high end. `bowed`: by one push in its middle; `arched`: as part of a circle; `kneed`: in two halves that
     * hang where they meet. What
     * that makes it shorter to the eye is taken off alike at both ends, at its high end where it leans, at its low one where it is tipped.
     */
    readonly shape: 'straight' | 'turned' | 'tipped' | 'leaning' | 'bowed' | 'arched' | 'kneed';
    /** Of the whole piece where it is turned, tipped or leans, of its ends where it is bent, of its halves. */
    readonly degrees: number;
    /** Where it is tipped or leans: the end that hangs, `first` being that to the west or north. */
    readonly low: 'first' | 'second' | null;
}

export interface MeasureJson {
    readonly kind: 'edge' | 'diagonal' | 'channel' | 'underside' | 'side-width' | 'side-thickness' | 'bottom-width';
    readonly of: string;
    readonly wanted: LengthJson;
    /** The words of the text that it goes back to, and the stock where that is what says it. */
    readonly goesTo: { readonly words: 'lines' | 'blocking' | 'sides' | 'bottom'; readonly stock: string | null };
}
