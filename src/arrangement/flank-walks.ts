import { squareThrough, type Line } from '../plane/line.ts';
import { flanksOf, relationInCorner, type Flank, type WallCarrier } from './carriers.ts';
import { isOutside, sideCut, type SideCut } from './corners.ts';
import type { Meetings, Pass, Run } from './meetings.ts';
import type { Plan } from './plan.ts';
import { closingAt, turnOf } from './wall-ends.ts';

/** Where a flank meets another: the corner of a coffer. `cut`: how the side on this flank ends here; null where it runs on unbroken. */
export interface Border {
    readonly other: Flank; readonly outside: boolean; readonly cut: SideCut | null;
    /** The flank whose side it comes to in line, where there is none of the other. */
    readonly joins?: Flank;
    /** There is no corner: it ends square at the back of the other. */
    readonly endsSquare?: boolean;
    /** It runs on to this, over what dies into it there. */
    readonly behind?: Line;
    /** Nor is it where a side is spliced: square to its flank, which is then the other as well. */
    readonly splice?: Line;
}
/** Where something passes or ends at a flank: the coffer before it ends at `entry`, the one after it begins at `exit`. */
interface Gap { readonly entry: Border; readonly exit: Border }
/** A flank from its start to its end, all that meets it in order. */
export interface FlankWalk { readonly flank: Flank; readonly start: Border; readonly end: Border; readonly gaps: readonly Gap[] }
/** Of a flank, from something that it meets to the next. `nth`: counted along the line, from 1. */
export interface Stretch { readonly flank: Flank; readonly start: Border; readonly end: Border; readonly nth: number }

/** The stretches of a flank between those of its gaps that count. */
export function stretchesOf({ flank, start, end, gaps }: FlankWalk, counts: (gap: Gap) => boolean): Stretch[] {
    const kept = gaps.filter(counts), starts = [start, ...kept.map(gap => gap.exit)], ends = [...kept.map(gap => gap.entry), end];
    return starts.map((from, i) => ({ flank, start: from, end: ends[i]!, nth: flank.side === 'right' ? i + 1 : starts.length - i }));
}

/** Whether the sides on this flank are broken there. */
export function isBreak({ entry }: Gap): boolean {
    return entry.cut !== null;
}

export function flankWalks(plan: Plan, walls: readonly WallCarrier[], meetings: Meetings): FlankWalk[] {
    return [
        ...walls.flatMap((wall, i) => walksOfWall(wall, walls.at(i - 1)!, walls[(i + 1) % walls.length]!, meetings.onWalls.get(wall)!, plan)),
        ...meetings.runs.flatMap(run => flanksOf(run.carrier).map(flank => walkOfFlank(run, flank))),
    ];
}

function walkOfFlank({ start, end, passes }: Run, flank: Flank): FlankWalk {
    const border = (at: typeof start): Border => {
        const other = at.at[flank.side];
        const outside = at.ring && isOutsideOfRing(flank, at, at === start);
        return { other, outside, cut: at.relation === 'dies' ? 'dies' : sideCut(flank, other, outside, at.corners, other.of.kind === 'wall' ? false : at.through) };
    };
    const gaps = passes.filter(pass => pass.touches.includes(flank.side)).map(pass => gapOf(flank, pass));
    return flank.side === 'right' ? { flank, start: border(start), end: border(end), gaps } : { flank, start: border(end), end: border(start), gaps: gaps.reverse() };
}

/** In a ring the outer flanks meet in a corner that turns left as the coffer is walked. */
function isOutsideOfRing(flank: Flank, end: Run['start'], atStartOfLine: boolean): boolean {
    const other = end.at[flank.side];
    const atStartOfFlank = atStartOfLine === (flank.side === 'right');
    return atStartOfFlank ? isOutside(other, flank) : isOutside(flank, other);
}

function gapOf(flank: Flank, { near, far, relation, through, corners }: Pass): Gap {
    const [entry, exit] = flank.side === 'right' ? [near, far] : [far, near];
    const border = (other: Flank): Border => ({
        other, outside: false, cut: relation === 'over' ? null : relation === 'dies' ? 'dies' : sideCut(flank, other, false, corners, flank.of.kind === 'wall' ? true : !through),
    });
    return { entry: border(entry), exit: border(exit) };
}

function walksOfWall(wall: WallCarrier, before: WallCarrier, after: WallCarrier, passes: readonly Pass[], plan: Plan): FlankWalk[] {
    const walk = {
        flank: wall.right, start: wallCorner(before, wall, wall, plan), end: wallCorner(wall, after, wall, plan),
        gaps: passes.map(pass => gapOf(wall.right, pass)),
    };
    const { start, end } = wall.closes, corner: Border = { other: wall.right, outside: true, cut: hasBoard(wall) ? 'outside-miter' : null };
    const beyond = (other: Flank): Border => ({ other, outside: false, cut: hasBoard(wall) ? 'dies' : null, behind: wall.right.base });
    return [
        ...start ? [{ flank: start, start: beyond(before.closes.end ?? before.right), end: corner, gaps: [] }] : [],
        walk,
        ...end ? [{ flank: end, start: corner, end: beyond(after.closes.start ?? after.right), gaps: [] }] : [],
    ];
}

function hasBoard({ perimeter }: WallCarrier): boolean {
    return perimeter.kind === 'half-beam';
}

/** The corner of two walls, for one of them. */
function wallCorner(before: WallCarrier, after: WallCarrier, own: WallCarrier, plan: Plan): Border {
    const other = own === before ? after : before, way = turnOf(before, after), outside = way === 'outside';
    const { closed, beside } = closingAt(before, after, own);
    if (closed) return { other: closed, outside: true, cut: hasBoard(own) ? 'outside-miter' : null };
    if (beside) return { other: beside, outside: false, cut: hasBoard(own) ? 'dies' : null };
    if (!hasBoard(own)) return { other: other.right, outside, cut: null };
    if (way === 'straight') return { other: other.right, outside, cut: 'splice', splice: squareThrough(own.right.base, after.start) };
    const relation = relationInCorner(own, other);
    const cut = relation === 'flush' ? sideCut(own.right, other.right, outside, plan.corners, undefined) : 'dies';
    return { other: other.right, outside, cut, ...relation === 'over' && { behind: other.right.base } };
}
