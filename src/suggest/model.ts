import type { Finding } from '../findings/finding.ts';
import type { TextChange } from '../findings/finding.ts';
import type { Direction, Room } from '../job/model.ts';
import type { Money } from '../cutting/model.ts';
import type { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';

/** Other grids for a room: what was tried, what is offered, and why the rest is not. */
export interface Suggestions {
    readonly room: Room;
    /** The room as it stands; undefined where it cannot be laid out. */
    readonly present?: Figures;
    /** The best first. */
    readonly offers: readonly Offer[];
    readonly tried: Tried;
    /** What is not tried here, in words. */
    readonly notTried: readonly string[];
    /** Why nothing could be tried, in words. */
    readonly nothing?: string;
}

interface Tried {
    /** Every grid, and those of them that plain geometry leaves. */
    readonly grids: number; readonly clear: number;
    /** False in a room that it excludes nothing in. */
    readonly byGeometry: boolean;
    /** Those that were laid out, put together dry and checked as the room itself is. */
    readonly lookedAt: number;
    /** More might be offered: so many coffers were laid out that the search was ended. */
    readonly isCutShort: boolean;
    /** What a coffer measures at least and at most in the grids that are tried. */
    readonly least: Ticks; readonly most: Ticks;
    /** How many grids each thing is in the way of, those that it is in the way of most often first. */
    readonly inTheWay: readonly Reason[];
    /** The same of what only the whole check found. */
    readonly found: readonly Reason[];
}
export interface Reason { readonly what: string; readonly grids: number }

/** How a direction of a grid is divided. */
export interface Divided {
    readonly coffers: number;
    /**
     * `equal`: by number. Else by the centers of its lines: all `shifted` alike, so that the end coffers take it; the `outer` coffers both wider or
     * both narrower; or `single` lines moved.
     */
    readonly how: How;
    /** By how much a line is moved, at most. */
    readonly by: Ticks;
    /** Centers of its lines from the west or north; of those that are not `equal`. */
    readonly centers: readonly Ticks[];
}
export type How = 'equal' | 'shifted' | 'outer' | 'single';

export interface Offer {
    readonly across: Divided; readonly down: Divided;
    readonly through: Direction;
    /** The room with that grid. */
    readonly room: Room;
    readonly figures: Figures;
    /** What is said otherwise in the text: `coffers-north 5`. */
    readonly says: readonly string[];
    /** The same as a change of the text; undefined where the words come from elsewhere. */
    readonly changes?: readonly TextChange[];
    /** Warnings that the room as it stands has not. */
    readonly warnings: readonly Finding[];
}

/** What a grid comes to. */
export interface Figures {
    readonly across: number; readonly down: number;
    readonly through: Direction;
    /** Coffers by their boxes: from the smallest to the biggest, east-west and north-south. */
    readonly width: Spread; readonly length: Spread;
    readonly coffers: number;
    /** How far the coffers of a direction differ, as a share of their size, and by how much they are longer than wide. Both 0 of equal squares. */
    readonly unequal: number; readonly offSquare: number;
    /** Errors, and warnings, that nobody has allowed. */
    readonly errors: number; readonly conflicts: number;
    /** Places at which blocking crosses a joist or runs along one; undefined where nobody knows where the joists are. */
    readonly joists?: number;
    /** Closing pieces: bottoms that biscuits keep from going up once their neighbors are up; undefined where no bottom has biscuits. */
    readonly closing?: number;
    /** Boards to be bought, by a rough plan for this room alone, what those with a price cost, and whether there are any without. */
    readonly boards: number;
    readonly costs: readonly Money[];
    readonly unpriced: boolean;
    /** Of one person; undefined where no work has a time. */
    readonly minutes?: Rational;
    /** Work that nobody timed, and so is not in them. */
    readonly untimed: boolean;
}
export interface Spread { readonly least: Ticks; readonly most: Ticks }
