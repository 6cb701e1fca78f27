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
    readonly before: readonly { readonly first: string; readonly then: string; readonly why: 'carries' | 'in-the-way' | 'runs-through' | 'custom' | 'ends-at' | 'last' | 'said' }[];
    /** Minutes of one person for setting out before, and for filling and sanding after; null where nothing is timed. */
    readonly layoutMinutes: number | null;
    readonly finishMinutes: number | null;
    readonly ladder: { readonly moves: Count; readonly distance: LengthJson };
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
    readonly pieces: readonly PlacingJson[];
    readonly fasteners: readonly { readonly what: string; readonly count: Count }[];
    /** Joints that are closed in this step. */
    readonly joints: readonly { readonly kind: string; readonly at: string; readonly pieces: readonly [string, string] }[];
}

export interface PlacingJson {
    /** Its name in the cut list. */
    readonly id: string;
    /**
     * `up`: lifted straight up. `beside`: lifted beside its place, as far as `east` and `south` say, and pushed there. `over`: a closing piece; it
     * has to go over biscuits that stand out at both of its ends. `none`: no way was found.
     */
    readonly way: 'up' | 'beside' | 'over' | 'none';
    readonly east: LengthJson | null;
    readonly south: LengthJson | null;
    /** What stands in the way of a straight lift. */
    readonly blockedBy: readonly string[];
}

export interface MeasureJson {
    readonly kind: 'edge' | 'diagonal' | 'channel' | 'underside' | 'side-thickness' | 'bottom-width';
    readonly of: string;
    readonly wanted: LengthJson;
    /** The words of the text that it goes back to, and the stock where that is what says it. */
    readonly goesTo: { readonly words: 'lines' | 'blocking' | 'sides' | 'bottom'; readonly stock: string | null };
}
