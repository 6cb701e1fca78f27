import type { RoomHead } from '../house-json.ts';
import type { StandingJson } from '../standing-json.ts';

/**
 * What `cofferwright seasons --format json` prints: moisture of the wood in the driest and the dampest season, and what the joints of the ceiling do
 * between them.
 * @title Over the year
 */
export interface SeasonsJson {
    readonly version: 1;
    readonly kind: 'cofferwright.seasons';
    readonly standing: StandingJson;
    readonly rooms: readonly SeasonsRoomJson[];
}

export interface SeasonsRoomJson extends RoomHead {
    /** Null where neither the room nor its house says its seasons. */
    readonly moisture: {
        /** Percent by weight. */
        readonly driest: number;
        readonly dampest: number;
        /** When the boards go up: as it is said, or half way. */
        readonly start: number;
        readonly said: boolean;
        /** How wet they may be at most for no joint to stand open by more than 1/32" after the first winter; null where no wood is known. */
        readonly startAtMost: number | null;
        readonly source: string;
    } | null;
    /** By kind of beam. */
    readonly beams: readonly MovingJson[];
    /** Names of stocks of which nothing is known. */
    readonly unknown: readonly string[];
}

export interface MovingJson {
    readonly lines: readonly string[];
    /** What sets how wide the beam is inside, and its bottom, by species. */
    readonly inside: string | null;
    readonly bottom: string | null;
    /** Play of the bottom between the sides, in all; null where it lies under them. */
    readonly play: (SeasonJson & { readonly built: SmallJson }) | null;
    /** What a butt joint opens where a bottom stands against the edge of that of these lines, if nothing holds it; null where none does. */
    readonly butt: (SeasonJson & { readonly lines: readonly string[] }) | null;
    /** What a corner of a coffer opens. */
    readonly corner: SeasonJson;
}

export interface SeasonJson { readonly driest: SmallJson; readonly dampest: SmallJson }

/** A movement, which may be less than nothing and need not be whole: 1 tick is 1/16256 in and 1/640 mm. */
export interface SmallJson {
    readonly ticks: number;
    /** The same in the job's units. */
    readonly text: string;
}
