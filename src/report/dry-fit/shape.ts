import type { Clash } from '../../dryfit/model.ts';
import type { Count } from '../amounts-json.ts';
import type { SourceJson } from '../place-json.ts';
import type { StandingJson } from '../standing-json.ts';
import type { RoomHead } from '../house-json.ts';

/**
 * What `cofferwright dry-fit --format json` prints: how the pieces of the cut list go together, each a solid in the form of its own line of the list.
 * @title Dry fit
 */
export interface DryFitJson {
    readonly version: 1;
    readonly kind: 'cofferwright.dry-fit';
    readonly standing: StandingJson;
    readonly rooms: readonly RoomJson[];
}

export interface RoomJson extends RoomHead {
    /** True where it is laid out and has no faults. */
    readonly closes: boolean;
    /** What was looked at; null where it is not laid out. */
    readonly looked: Looked | null;
    readonly faults: readonly FaultJson[];
}

interface Looked {
    readonly pieces: Count;
    /** Pairs near enough to be checked for overlap. */
    readonly pairs: Count;
    /** Pairs that have to touch. */
    readonly joints: Count;
    /** Pairs that have to keep a planned gap. */
    readonly gaps: Count;
    readonly undersides: Count;
    readonly coffers: Count;
    /** How many there are: one without four square corners, or with no face on some side, is not measured from face to face. */
    readonly allCoffers?: Count;
}

export interface FaultJson {
    /** `cofferwright explain RULE` prints its page. */
    readonly rule: 'pieces-overlap' | 'joint-opens' | 'underside-not-flush' | 'coffer-off-size' | 'piece-miscounted';
    readonly severity: 'error' | 'warning' | 'hint';
    /** @minLength 1 */
    readonly message: string;
    /** Names of pieces: the one that all of it has in common first, then those that are off in the same way; round a coffer those that stand there. */
    readonly pieces: readonly string[];
    /** The part's words in the text; null for a coffer. */
    readonly source: SourceJson | null;
    readonly clashes: readonly ClashJson[];
}

export interface ClashJson {
    /**
     * In each other; apart where they should touch; a gap that is wider than planned; touching, or keeping their gap, over another area than they should;
     * or as planned, and off by what the tape cannot show.
     */
    readonly kind: Clash['kind'];
    /** The name of the other piece, or the ceiling or a wall. */
    readonly with: string;
    /** How deep, or how far; 1 tick = 1/16256 in = 1/640 mm. Along a miter it need not be whole. */
    readonly ticks: number;
    /** The same in the job's units; finer than the tape with decimals. */
    readonly text: string;
    /** Square inches that stand to each other as they should. */
    readonly touches: Area | null;
    /** Square inches that should. */
    readonly wanted: Area | null;
}

/** @minimum 0 */
type Area = number;
