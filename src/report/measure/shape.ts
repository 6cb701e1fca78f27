import type { Status } from '../../job/status.ts';
import type { Dimension } from '../../measure/dimensions.ts';
import type { Slip } from '../../measure/slips.ts';
import type { Stop } from '../../measure/walk.ts';
import type { LengthJson } from '../amounts-json.ts';
import type { RoomHead } from '../house-json.ts';
import type { SourceJson } from '../place-json.ts';
import type { StandingJson } from '../standing-json.ts';

/**
 * What `cofferwright measure --format json` prints: how the dimensions of each room are known, in the order in which one walks round it.
 * @title Still to measure
 */
export interface MeasureJson {
    readonly version: 1;
    readonly kind: 'cofferwright.measure';
    readonly standing: StandingJson;
    readonly rooms: readonly MeasureRoomJson[];
}

export interface MeasureRoomJson extends RoomHead {
    /** How well dimensions have to be known before anything is cut from them. */
    readonly least: Status;
    /** Whether lists ask for it: the job says how well they have to be known, or the room says of one how that is. */
    readonly asked: boolean;
    readonly dimensions: readonly DimensionJson[];
    /** Where the tape does not close: the single readings that would explain it, the likeliest first. */
    readonly suspects: readonly SuspectJson[];
}

export interface SuspectJson {
    /** `wall east`, `the diagonal from north-west to south-east`. */
    readonly name: string;
    readonly reads: LengthJson;
    /** What it would have to be, to the nearest tick. */
    readonly should: LengthJson;
    /** The usual slip by which it may have come about. */
    readonly slip: Slip | null;
    readonly source: SourceJson;
}

export interface DimensionJson {
    readonly kind: Dimension['kind'];
    /**
     * The wall, the fixture, the corners of the diagonal, the size of the joists, the stock, the profile that wraps something; empty of a height, a survey
     * and a diagonal that nobody measured.
     */
    readonly name: string;
    /** Its length; null of the place of a fixture, of boards, and of what nobody says. Of joists the center of the first. */
    readonly says: LengthJson | null;
    /** Of boards, and of what a beam wraps: width, and thickness or height, as far as anything follows from it. */
    readonly sizes?: readonly LengthJson[];
    /** Of a survey: how many readings are known so. */
    readonly readings?: number;
    /** `assumed`: nobody says the dimension at all; `unsaid`: nobody says how it is known. */
    readonly known: Dimension['known'];
    readonly on: string | null;
    readonly by: string | null;
    /** Whether lengths of pieces follow from it. */
    readonly cutFrom: boolean;
    readonly todo: Stop['todo'];
    /** Of what stands at a wall: that wall, and how far along it, walking clockwise. */
    readonly wall: string | null;
    readonly along: LengthJson | null;
    readonly source: SourceJson;
}
