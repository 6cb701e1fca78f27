import type { Side } from '../../job/model.ts';
import type { Joint, Part } from '../../takeoff/model.ts';
import type { Count, LengthJson, Whole } from '../amounts-json.ts';
import type { SourceJson } from '../place-json.ts';
import type { StandingJson } from '../standing-json.ts';
import type { RoomHead } from '../house-json.ts';

/**
 * What `cofferwright cut-list --format json` prints.
 * @title Cut list
 */
export interface CutListJson {
    readonly version: 1;
    readonly kind: 'cofferwright.cut-list';
    readonly standing: StandingJson;
    readonly rooms: readonly Room[];
    readonly pieces: readonly OnePiece[];
    readonly joints: readonly OneJoint[];
    readonly consumables: readonly OneConsumable[];
}

interface Room extends RoomHead { readonly cutTo: LengthJson }

interface OnePiece {
    /** Stable under edits elsewhere in the text. */
    readonly id: string;
    readonly room: string;
    readonly part: Part;
    /** The beam's line: 1, 2, 3 run north-south, A, B, C east-west. */
    readonly line: string | null;
    readonly bay: Whole | null;
    readonly coffer: Whole | null;
    readonly on: Side | null;
    readonly stock: string;
    /** Between the short points, on the side that shows. */
    readonly face: LengthJson;
    /** Between the long points. */
    readonly back: LengthJson;
    /** West or north end first. */
    readonly ends: readonly [EndJson, EndJson];
    /** The line, or the wall by its name (north), that it meets at each of them; null at a splice, and of a spacer. */
    readonly meets?: readonly [string | null, string | null];
    /** The mitered end, seen with the face towards you and the groove edge down; null where it does not matter. */
    readonly hand: 'left' | 'right' | null;
    readonly width: LengthJson;
    readonly thickness: LengthJson;
    /** Narrower or thinner than its stock. */
    readonly ripped: boolean;
    /** In the order it is done. */
    readonly machining: readonly string[];
    readonly where: string;
    /** Why it is that long, as a sum in words. */
    readonly why: string;
    /** The terms of that sum; they add up to the exact length. */
    readonly terms: readonly { readonly what: string; readonly times: number; readonly length: LengthJson; readonly source: SourceJson | null }[];
    readonly source: SourceJson;
}

/** How an end is cut. */
export type EndJson =
    | { readonly cut: 'square' }
    | { readonly cut: 'coped' }
    | Mitered;
interface Mitered {
    readonly cut: 'miter';
    /** Off square. */
    readonly degrees: number;
}

interface OneJoint {
    readonly room: string;
    readonly kind: Joint['kind'];
    readonly at: string;
    readonly pieces: readonly [string, string];
    readonly biscuits: { readonly count: Count; readonly size: string } | null;
}

interface OneConsumable {
    readonly room: string;
    readonly what: string;
    readonly count: number;
    readonly unit: string;
    /** The rule it is counted by. */
    readonly by: string;
    /** Where the rule comes from. */
    readonly basis: string;
}
