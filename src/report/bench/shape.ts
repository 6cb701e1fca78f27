import type { Wrong } from '../../cutting/at-bench.ts';
import type { Count, LengthJson } from '../amounts-json.ts';
import type { RoomHead } from '../house-json.ts';
import type { SourceJson } from '../place-json.ts';
import type { StandingJson } from '../standing-json.ts';

/**
 * What `cofferwright bench --format json` prints: boards as they were measured, the pieces that they are spoiled for and may still go into, and how cutters
 * go by the readings of their gauges.
 * @title At the bench
 */
export interface BenchJson {
    readonly version: 1;
    readonly kind: 'cofferwright.bench';
    readonly standing: StandingJson;
    readonly rooms: readonly BenchRoomJson[];
}

export interface BenchRoomJson extends RoomHead {
    readonly boards: readonly BenchBoardJson[];
    readonly gauges: readonly GaugeJson[];
}

export interface BenchBoardJson {
    readonly name: string;
    readonly stock: string;
    readonly source: SourceJson;
    /** By how much it is off its stock, and its rabbet off the one that is drawn; null where it is as it should be, or was not measured. */
    readonly off: { readonly width: LengthJson | null; readonly thickness: LengthJson | null; readonly rabbet: LengthJson | null };
    /** Names of the pieces of its stock that it will not do for. */
    readonly spoils: readonly { readonly why: Wrong; readonly pieces: readonly string[] }[];
    /** Those that it will do for and that are still to be cut, the longest first; and what of them comes out of its length, where that was measured. */
    readonly mayGo: readonly string[];
    readonly takes: readonly string[];
    /** Pieces that were cut from it and are cut again, and the wood that is there for each; null: a new board. */
    readonly recut: readonly { readonly piece: string; readonly why: Wrong; readonly from: LeftoverJson | null }[];
}
/** `offcut`: what a plan at once for the rest of its room leaves of a board; its source is its stock. */
export interface LeftoverJson { readonly what: 'on hand' | 'left' | 'offcut'; readonly length: LengthJson; readonly source: SourceJson }

export interface GaugeJson {
    readonly of: string | null;
    readonly meant: LengthJson;
    readonly readings: readonly LengthJson[];
    /** Boards from one reading to the next. */
    readonly every: Count;
    readonly creeps: boolean;
    /** By a reading, in ticks, less than nothing where it falls: the middle of the slopes between all pairs of readings. */
    readonly ticksPerReading: number;
    /** How often chance alone would make as clear a trend. */
    readonly chance: number;
    /** In how many more boards it is off enough to be looked at, and scrap; null where it does not go that way. */
    readonly boardsUntilLook: Count | null;
    readonly boardsUntilScrap: Count | null;
    readonly source: SourceJson;
}
