import type { Count, LengthJson } from '../amounts-json.ts';
import type { RoomHead } from '../house-json.ts';
import type { SourceJson } from '../place-json.ts';
import type { StandingJson } from '../standing-json.ts';

/**
 * What `cofferwright joists --format json` prints: which joists each piece of blocking finds, how many screws go into them, how much of a screw is
 * in the wood, and what hangs there. Information, and no design.
 * @title Joists
 */
export interface JoistsJson {
    readonly version: 1;
    readonly kind: 'cofferwright.joists';
    readonly standing: StandingJson;
    readonly rooms: readonly HoldingRoomJson[];
}

export interface HoldingRoomJson extends RoomHead {
    /** Null where nobody knows where the joists are. */
    readonly joists: { readonly running: 'north-south' | 'east-west'; readonly source: SourceJson; readonly all: readonly JoistJson[] } | null;
    readonly beams: readonly HoldingBeamJson[];
}

export interface JoistJson {
    /** From the west of those that run north-south, from the north of the others. */
    readonly center: LengthJson;
    readonly width: LengthJson;
    /** How it was found, where it is not as the row has it. */
    readonly found: 'moved' | 'doubled' | 'extra' | null;
}

export interface HoldingBeamJson {
    /** Its line; null of a half beam. */
    readonly line: string | null;
    /** The wall of a half beam. */
    readonly wall: string | null;
    /** Screws into joists; null where the profile says none. */
    readonly screws: Count | null;
    /** Screws into backing, of the pieces that find no joist; null where the profile says none. */
    readonly intoBacking: Count | null;
    /** How much of a screw is in the joist, less than nothing where it does not reach; null where it is not known, and where none goes into a joist. */
    readonly thread: LengthJson | null;
    /** What hangs there at 12 % moisture content, in pounds; null where it is not known. */
    readonly pounds: number | null;
    readonly poundsPerFoot: number | null;
    readonly poundsPerScrew: number | null;
    /** Published withdrawal value of a screw, in pounds: for each inch of thread, and times the thread in wood and the factor 0.9 for a load that stays. */
    readonly withdrawal: { readonly perInch: number; readonly ofScrew: number; readonly source: string } | null;
    readonly pieces: readonly HoldingPieceJson[];
}

export interface HoldingPieceJson {
    /** Its name in the cut list. */
    readonly id: string;
    readonly screws: Count | null;
    /** Screws into backing, where it finds no joist; null where the profile says none. */
    readonly intoBacking: Count | null;
    /** The joists that its screws find. */
    readonly finds: readonly {
        /** The joist's center, as above. */
        readonly center: LengthJson;
        /** From where to where along the piece a screw finds it, from its west or north end. */
        readonly from: LengthJson;
        readonly to: LengthJson;
        /** It runs along the joist, and not across it. */
        readonly along: boolean;
        readonly screws: Count | null;
    }[];
    /** The longest stretch without a screw. */
    readonly open: { readonly from: LengthJson; readonly to: LengthJson };
}
