import type { Count, LengthJson } from '../amounts-json.ts';
import type { RoomHead } from '../house-json.ts';
import type { SourceJson } from '../place-json.ts';
import type { StandingJson } from '../standing-json.ts';

/**
 * What `cofferwright survey --format json` prints: the ceiling as it was read, the plane that the sides hang by, and what that leaves of each of
 * them. Places along a piece count from its west or north end.
 * @title Under the ceiling
 */
export interface SurveyJson {
    readonly version: 1;
    readonly kind: 'cofferwright.survey';
    readonly standing: StandingJson;
    readonly rooms: readonly SurveyRoomJson[];
}

export interface SurveyRoomJson extends RoomHead {
    /** Null where nobody surveyed the ceiling. */
    readonly survey: {
        readonly method: string | null;
        readonly source: SourceJson;
        /** Readings that are used: places east and south of the north-west corner, and what was read there up from the level line. */
        readonly readings: readonly { readonly east: LengthJson; readonly south: LengthJson; readonly up: LengthJson }[];
        /** Null where nothing follows from the readings. */
        readonly plane: {
            /** Up from the level line: at the north-west corner, and what it rises over its way to the east and to the south, as parts of that way. */
            readonly at: LengthJson;
            readonly risesEast: number;
            readonly risesSouth: number;
            /** Sides that have to be scribed, and how deep at the deepest. */
            readonly scribed: Count;
            readonly deepest: LengthJson;
            /** No other plane that is allowed leaves less to be scribed. */
            readonly proved: boolean;
        } | null;
        /** What the best plane of each slope would leave to be scribed, from level on; the slope is a part of the way, along and across. */
        readonly planes: readonly { readonly slope: number; readonly scribed: Count; readonly deepest: LengthJson; readonly proved: boolean }[];
        /** What is level at a wall (a cabinet or casing by its name, or null: the wall itself), and how far the beams run out of level over its length. */
        readonly outOfLevel: readonly { readonly wall: string; readonly fixture: string | null; readonly over: LengthJson; readonly by: LengthJson }[];
        /** What hangs there and is not looked at, in sentences. */
        readonly leftOut: readonly string[];
    } | null;
    readonly sides: readonly SurveySideJson[];
    /** Spacers that have to be cut shorter than the rest, and how high they may be at most, at a mark of the tape. */
    readonly spacers: readonly { readonly id: string; readonly height: LengthJson; readonly atMost: LengthJson }[];
}

export interface SurveySideJson {
    /** Its name in the cut list. */
    readonly id: string;
    /** Its line; null of a half beam. */
    readonly line: string | null;
    /** The side of its line that it is on, or the wall of a half beam. */
    readonly on: string | null;
    readonly length: LengthJson;
    readonly heldDown: LengthJson;
    /** The least and the greatest gap between side and ceiling, less than nothing where it is scribed; null where nothing is known. */
    readonly gap: { readonly least: SurveySpotJson; readonly most: SurveySpotJson } | null;
    /** How high the trim is, and what it laps over the side where that is least; null without trim. */
    readonly trim: { readonly height: LengthJson; readonly laps: SurveySpotJson } | null;
    /** How thick the blocking is, and what the side laps over it where that is least; null without blocking. */
    readonly blocking: { readonly thickness: LengthJson; readonly laps: SurveySpotJson } | null;
    readonly scribes: readonly SurveyStretchJson[];
    /** Where the blocking is furred down so that the side laps it enough. */
    readonly shims: readonly SurveyStretchJson[];
    /** The gap at every place where the ceiling bends; between two of them it runs straight. */
    readonly profile: readonly SurveySpotJson[];
    readonly unknown: readonly { readonly from: LengthJson; readonly to: LengthJson }[];
}
export interface SurveySpotJson { readonly along: LengthJson; readonly is: LengthJson }
export interface SurveyStretchJson { readonly from: LengthJson; readonly to: LengthJson; readonly deepest: SurveySpotJson }
