import { SIDES, type Room, type Side } from '../job/model.ts';
import type { Given } from '../provenance/source.ts';
import type { Measure } from '../quantity/measure.ts';
import { printLength } from '../quantity/print-length.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import type { Trouble } from './model.ts';

/** A wall longer than this is a slip of the keyboard, and its figures would no longer be exact. */
const LONGEST_WALL: Ticks = 1000 * TICKS_PER_FOOT;

export interface Rectangle {
    /** East-west, and north-south, with the walls that say so. */
    readonly width: Ticks; readonly length: Ticks;
    readonly widthBy: Given<Measure>; readonly lengthBy: Given<Measure>;
}

/** A tape across a room tells no less: common practice, no source. */
const TELLS: Ticks = TICKS_PER_INCH / 16;

/** A diagonal that is not that of a rectangle with these walls. */
function outOfSquare({ diagonal }: Room, width: Ticks, length: Ticks): Trouble[] {
    if (!diagonal) return [];
    const { at, ticks, acrossWidth, acrossLength } = diagonal;
    const square = Math.round(Math.hypot(acrossWidth ? width : 0, acrossLength ? length : 0));
    return Math.abs(ticks - square) <= TELLS ? [] : [{ kind: 'out-of-square', measured: ticks, square, at }];
}

/**
 * The room as a rectangle: opposite walls must be equal, and a diagonal that was measured that of a rectangle. A wall that nobody gave is as
 * long as the one across.
 * Undefined where neither wall of a pair is known, silently, and where the walls are no rectangle's, with the trouble.
 */
export function rectangleOf(room: Room): { readonly rectangle?: Rectangle; readonly troubles: readonly Trouble[] } {
    const troubles: Trouble[] = [];
    for (const side of SIDES) {
        const wall = room.walls[side];
        if (!wall) continue;
        if (!(wall.value.ticks > 0)) troubles.push({ kind: 'not-positive', what: `the ${side} wall`, ticks: wall.value.ticks, at: wall.at });
        else if (wall.value.ticks > LONGEST_WALL) troubles.push({ kind: 'not-supported', what: `a wall longer than ${printLength(LONGEST_WALL, room.job.show.value)}`, instead: 'the length of one room', at: wall.at });
    }
    const pair = (a: Side, b: Side): Given<Measure> | undefined => {
        const one = room.walls[a], other = room.walls[b];
        if (one && other && one.value.ticks !== other.value.ticks) {
            const [first, second] = [one.value.ticks, other.value.ticks];
            troubles.push({ kind: 'not-rectangular', walls: [a, b], a: first, b: second, at: other.at, other: one.at });
        }
        return one ?? other;
    };
    const widthBy = pair('north', 'south'), lengthBy = pair('east', 'west');
    if (widthBy && lengthBy && troubles.length === 0) troubles.push(...outOfSquare(room, widthBy.value.ticks, lengthBy.value.ticks));
    if (troubles.length > 0 || !widthBy || !lengthBy) return { troubles };
    return { rectangle: { width: widthBy.value.ticks, length: lengthBy.value.ticks, widthBy, lengthBy }, troubles };
}
