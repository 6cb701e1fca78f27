import type { Compass, Cut, FlatCut, Joint, Part } from '../../takeoff/model.ts';
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
    /** The side of its line or coffer that it stands on, as one of eight winds; of what runs along a wall the name of that. */
    readonly on: string | null;
    /** It is cut by now, as the text says. */
    readonly isCut: boolean;
    readonly stock: string;
    /**
     * Along the side that shows; of a band along its edge at the room, of a bottom or blocking along its edge to the east or south. Between the short
     * points, or round an outside corner the long ones.
     */
    readonly face: LengthJson;
    /** Along the hidden back; of a band along the wall, of a bottom or blocking along its edge to the west or north. */
    readonly back: LengthJson;
    /** What it takes of a board: from the first of its corners to the last, along it. More than face and back where one end leans out and the other in. */
    readonly overall?: LengthJson;
    /** The longer and the shorter of its two long edges, where they differ. */
    readonly long?: LengthJson;
    readonly short?: LengthJson;
    /** West or north end first. */
    readonly ends: readonly [EndJson, EndJson];
    /**
     * The same ends from the left: with the face towards you and the groove edge down; of a bottom or blocking seen from above, its edge to the west or
     * north away from you.
     */
    readonly left?: EndJson;
    readonly right?: EndJson;
    /** The line, or the wall by its name (north), that it meets at each of `ends`; null at a splice, and of a spacer. */
    readonly meets?: readonly [string | null, string | null];
    /** The mitered end, seen with the face towards you and the groove edge down; null where both ends are mitered, or none. */
    readonly hand: 'left' | 'right' | null;
    /** It cannot be turned end for end, so left and right are told apart at the saw. Without a groove a side with one miter can be. */
    readonly handed?: boolean;
    readonly width: LengthJson;
    readonly thickness: LengthJson;
    /** What its edge at the wall is left wider than `width`, to be scribed to it. */
    readonly scribe?: LengthJson;
    /** Of a spacer under a low place of a surveyed ceiling: how high it is cut instead of its `width`. */
    readonly lowerTo?: LengthJson;
    /** Narrower or thinner than its stock. */
    readonly ripped: boolean;
    /**
     * Of a panel that is no rectangle: the corners that it is cut to, in their order round it, from the first of `ends` along it and from its edge to the
     * north or west across. Its lengths and its width are those of the rectangle that it is cut from.
     */
    readonly shape?: readonly { readonly along: LengthJson; readonly across: LengthJson }[];
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
export interface EndJson {
    /** `miter`: in a corner with another piece; `angled`: off square along what it ends at; `coped`: cut at its angle, then to the profile it meets. */
    readonly cut: 'square' | 'miter' | 'angled' | 'coped';
    /** Off square, without a sign; not said of a square end. */
    readonly degrees?: number;
    /** From square, as the saw reads it: more than 0 where the back is the longer at this end, less where the face is; 0 of a square end. */
    readonly angle?: number;
    /** Which of its two long edges is the longer at this end; not said of a square end. */
    readonly longer?: Compass;
    /**
     * How it ends: in an inside or outside miter; square past another side or against it; along the face of what it dies into; between pieces that run
     * through; on to the far edge of what it ends at; at a splice. Not said of a spacer.
     */
    readonly how?: Cut;
    /** Of a crown: what the saw is turned to (miter) and tilted (bevel) where it lies flat on its back, in degrees. */
    readonly flat?: FlatCut;
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
