import type { Count, FromOne, LengthJson, MoneyJson } from '../amounts-json.ts';
import type { RoomHead } from '../house-json.ts';
import type { StandingJson } from '../standing-json.ts';

/**
 * What `cofferwright suggest --format json` prints: other grids for each room, the best first. Each was laid out, put together dry and checked as the
 * room itself is, without an error.
 * @title Other grids
 */
export interface SuggestionsJson {
    readonly version: 1;
    readonly kind: 'cofferwright.suggest';
    readonly standing: StandingJson;
    readonly rooms: readonly SuggestedRoomJson[];
}

export interface SuggestedRoomJson extends RoomHead {
    /** Why nothing could be tried; null where something was. */
    readonly nothing: string | null;
    readonly tried: {
        /** Every grid, and those that plain geometry leaves: null in a room that is not four walls along the compass, where it excludes nothing. */
        readonly grids: Count;
        readonly clear: Count | null;
        /** Those that were laid out, put together dry and checked. */
        readonly lookedAt: Count;
        /** The search was ended before all that are wanted were found: the coffers of the grids looked at were as many as are laid out for it. */
        readonly cutShort: boolean;
        /** What a coffer measures at least and at most in the grids that are tried. */
        readonly coffers: { readonly least: LengthJson; readonly most: LengthJson };
        /** In how many of all grids each thing is in the way, and in how many of those that were looked at whole each was found wrong. */
        readonly inTheWay: readonly ReasonJson[];
        readonly found: readonly ReasonJson[];
    };
    /** What is not tried here, in words. */
    readonly notTried: readonly string[];
    /** The room as it stands; null where it cannot be laid out. */
    readonly present: GridFiguresJson | null;
    readonly offers: readonly OfferJson[];
}

export interface ReasonJson { readonly what: string; readonly grids: Count }

export interface GridFiguresJson {
    /** Coffers along the north wall and along the east wall. */
    readonly coffersNorth: Count;
    readonly coffersEast: Count;
    readonly through: 'north-south' | 'east-west';
    readonly coffers: Count;
    /** The smallest and the biggest coffer, east-west and north-south, by the boxes round them. */
    readonly eastWest: SpreadJson;
    readonly northSouth: SpreadJson;
    /** By how much of their mean the coffers of a direction differ at most, and how much longer than wide they are on the mean: 0.05 is 5 %. */
    readonly unequal: number;
    readonly offSquare: number;
    /** Errors, and warnings, that nobody has allowed. */
    readonly errors: Count;
    readonly conflicts: Count;
    /** Places at which blocking crosses a joist or runs along one; null where nobody knows where the joists are. */
    readonly joists: Count | null;
    /** Bottoms that biscuits keep from going up once their neighbors are up; null where no bottom has biscuits. */
    readonly closingPieces: Count | null;
    /** Boards to be bought by a rough plan for this room alone: plans are only held against each other here. */
    readonly boards: Count;
    /** What those with a price cost. */
    readonly costs: readonly MoneyJson[];
    /** False where some have none. */
    readonly allPriced: boolean;
    /** Of one person; null where no work has a time. */
    readonly hours: number | null;
    /** False where some work has none. */
    readonly allTimed: boolean;
}

export interface SpreadJson { readonly least: LengthJson; readonly most: LengthJson }

export interface OfferJson extends GridFiguresJson {
    /** The best is 1. */
    readonly rank: FromOne;
    /** What to write in the grid instead. */
    readonly write: readonly string[];
    /** How lines 1, 2, 3 and lines A, B, C stand. */
    readonly linesNorth: DividedJson;
    readonly linesEast: DividedJson;
    /** Warnings that the room as it stands has not. */
    readonly warnings: readonly { readonly rule: string; readonly message: string }[];
}

export interface DividedJson {
    /** Coffers of one size; or to be clear of something all lines moved alike, the outer coffers both wider or narrower, or single lines moved. */
    readonly how: 'equal' | 'shifted' | 'outer' | 'single';
    /** By how much a line is moved from where equal coffers would have it, at most. */
    readonly by: LengthJson;
}
