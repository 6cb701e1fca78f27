import type { LengthJson } from '../amounts-json.ts';
import type { RoomHead } from '../house-json.ts';
import type { SourceJson } from '../place-json.ts';
import type { StandingJson } from '../standing-json.ts';
import type { Step, Trade, TradeTask } from './content.ts';

/**
 * What `cofferwright trades --format json` prints: what the other trades have to move, bring out, wire through or back up, and by which step of the work.
 * @title For the other trades
 */
export interface TradesJson {
    readonly version: 1;
    readonly kind: 'cofferwright.trades';
    readonly standing: StandingJson;
    readonly rooms: readonly TradesRoomJson[];
}

export interface TradesRoomJson extends RoomHead {
    readonly tasks: readonly TaskJson[];
}

export interface TaskJson {
    readonly trade: Trade;
    /** The fixture's name, or the beam that wants backing. */
    readonly of: string;
    /** Its kind, or backing. */
    readonly what: string;
    /** Its center now; of backing the middle of it. */
    readonly at: SpotJson | null;
    readonly does: TradeTask['does'];
    /** Its center then, where it moves and the place is known. */
    readonly to: SpotJson | null;
    /** How far which way, or how much, in words. */
    readonly words: string;
    readonly why: string;
    /** The step of the work on the ceiling before which it has to be done. */
    readonly before: Step;
    /** The fixture in the text; null of backing. */
    readonly source: SourceJson | null;
}

/** From the room's north-west corner. */
export interface SpotJson { readonly east: LengthJson; readonly south: LengthJson }
