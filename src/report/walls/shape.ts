import type { Known } from '../../job/status.ts';
import type { LengthJson } from '../amounts-json.ts';
import type { RoomHead } from '../house-json.ts';
import type { StandingJson } from '../standing-json.ts';

/**
 * What `cofferwright walls --format json` prints: what walls that are not straight or not plumb do to what runs along them and ends at them. Places along a
 * wall count from its west or north end.
 * @title Along the walls
 */
export interface WallsJson {
    readonly version: 1;
    readonly kind: 'cofferwright.walls';
    readonly standing: StandingJson;
    readonly rooms: readonly WallsRoomJson[];
}

export interface WallsRoomJson extends RoomHead {
    /** Those of which something is said. */
    readonly walls: readonly BowedWallJson[];
}

export interface BowedWallJson {
    readonly name: string;
    readonly length: LengthJson;
    /** What runs along it. */
    readonly runs: 'band' | 'half-beam' | null;
    /** How far it stands into the room at band height past a string from corner to corner, less than nothing behind it; straight between. */
    readonly profile: readonly {
        readonly along: LengthJson; readonly standsIn: LengthJson;
        /** How what was read there is known; not of a corner, where nothing was read. */
        readonly reading?: KnownJson;
    }[];
    /** How far it leans in under the ceiling, less than nothing back, with how that is known; null where nothing is said of it. */
    readonly leans?: { readonly standsIn: LengthJson; readonly reading: KnownJson } | null;
    /** Of all that is said of it what is known least: scribes, gaps and what is cut shorter go by all of it. */
    readonly least?: KnownJson;
    /** How much farther into the room all of it stands than it was measured, less than nothing farther back. */
    readonly moved: LengthJson;
    /** Stretches over which what runs along it is scribed, and where it stays open behind it, each with the most of it. */
    readonly scribes: readonly WallStretchJson[];
    readonly gaps: readonly WallStretchJson[];
    /** Pieces that end there, and how much shorter than listed they are cut; less than nothing: longer. */
    readonly cutShorter: readonly {
        readonly id: string; readonly along: LengthJson; readonly by: LengthJson;
        /** The wall that it ends at, where that is another one, of which nothing is said: what runs along this wall is moved with it. */
        readonly at?: string;
    }[];
}
/** How a dimension is known, when and by whom; `unsaid`: nobody says how. */
export interface KnownJson { readonly known: Known; readonly on: string | null; readonly by: string | null }
export interface WallStretchJson {
    readonly from: LengthJson; readonly to: LengthJson;
    readonly deepest: { readonly along: LengthJson; readonly is: LengthJson };
}
