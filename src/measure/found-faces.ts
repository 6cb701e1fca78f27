import { inwards, isForward, wayOf, type ShapedWall } from '../ceiling/shape.ts';
import type { Ceiling } from '../ceiling/model.ts';
import type { Point } from '../plane/point.ts';
import { profileOf, type BowedWall } from './bowed.ts';

/** The face of a wall as it was found at band height. */
export interface FoundFace {
    readonly wall: ShapedWall;
    /** How far it stands into the room past its string, by the places along it; undefined where nothing is said of it. */
    readonly profile?: BowedWall['profile'];
    /** From its first corner to its last as the walls go round, in ticks from the room's north-west corner; no whole numbers. */
    readonly points: readonly Point[];
}

/**
 * Every wall's face as it was found, in the order of the walls, with all offsets from its string multiplied by `times`. Where a wall leans, its corner lies
 * where it meets the next one; where two in line lean differently, each ends beside the corner.
 */
export function foundFaces(ceiling: Pick<Ceiling, 'walls' | 'room'>, times = 1): FoundFace[] {
    const { walls, room: { bows = {} } } = ceiling;
    const found = walls.map((wall): { wall: ShapedWall; profile?: BowedWall['profile']; lean: number } => {
        const bow = bows[wall.name];
        return bow ? { wall, profile: profileOf(wall, bow).profile, lean: (bow.lean?.value ?? 0) * times } : { wall, lean: 0 };
    });
    const corners = found.map((own, i) => cornerBetween(found.at(i - 1)!, own));
    return found.map(({ wall, profile }, i): FoundFace => {
        const inner = (profile ?? []).slice(1, -1).map(({ along, into }) => placeOn(wall, along, into * times));
        const points = [corners[i]!.after, ...isForward(wall) ? inner : inner.reverse(), corners[(i + 1) % walls.length]!.before];
        return { wall, points, ...profile && { profile } };
    });
}

/** A place along a wall from its west or north end, so far into the room. */
export function placeOn(wall: ShapedWall, along: number, into: number): Point {
    const { from, to, length } = wall, { x, y } = inwards(wall), start = isForward(wall) ? along : length - along;
    // the ends are whole ticks, and its length is what the tape says
    const share = start / length;
    return { x: from.x + (to.x - from.x) * share + x * into, y: from.y + (to.y - from.y) * share + y * into };
}

/** Sine of the angle between walls that are taken to be in line. */
const IN_LINE = 1e-3;

type Leaning = { readonly wall: ShapedWall; readonly lean: number };
function cornerBetween(one: Leaning, other: Leaning): { readonly before: Point; readonly after: Point } {
    const at = other.wall.from;
    if (one.lean === 0 && other.lean === 0) return { before: at, after: at };
    const a = wayOf(one.wall), b = wayOf(other.wall), turn = a.x * b.y - a.y * b.x;
    const moved = (way: Point, by: number): Point => ({ x: at.x - way.y * by, y: at.y + way.x * by });
    if (Math.abs(turn) < IN_LINE) return { before: moved(a, one.lean), after: moved(b, other.lean) };
    // along the one wall to where the other, moved, is: both strings moved square to themselves meet there
    const start = moved(a, one.lean), end = moved(b, other.lean), t = ((end.x - start.x) * b.y - (end.y - start.y) * b.x) / turn;
    const meet = { x: start.x + a.x * t, y: start.y + a.y * t };
    return { before: meet, after: meet };
}
