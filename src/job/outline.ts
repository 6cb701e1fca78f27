import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import type { Corner, Diagonal, Room, RoomWall } from './model.ts';

/** The corners of a room from its walls and diagonals: plane geometry. x runs east and y south from the north-west corner of the box round the room. */
export interface Outline {
    /** Where each wall begins, in the order of the walls, in whole ticks. */
    readonly corners: readonly Spot[];
    /** The box round the room, east-west and north-south. */
    readonly width: Ticks; readonly length: Ticks;
    /** Where the tape comes out that has gone round the room, as seen from where it began; what lets the walls meet takes it off the longest one that way. */
    readonly gap: Spot;
    /** Walls that were taken longer or shorter for it. */
    readonly stretched: readonly { readonly wall: RoomWall; readonly to: Ticks }[];
    /** Diagonals that did not shape the room, and what they are by it. */
    readonly checks: readonly { readonly diagonal: Diagonal; readonly is: Ticks }[];
}
export interface Spot { readonly x: Ticks; readonly y: Ticks }

/** Why nobody can tell where the corners are. */
export type Unclear =
    | { readonly why: 'opposite-walls-differ'; readonly walls: readonly (readonly [RoomWall, RoomWall])[] }
    /** A diagonal that is not a rectangle's, of a room of which not all walls were measured. */
    | { readonly why: 'walls-not-measured'; readonly diagonal: Diagonal; readonly square: Ticks }
    /** No three corners lie so far apart. */
    | { readonly why: 'no-such-triangle'; readonly diagonal: Diagonal; readonly walls: readonly [RoomWall, RoomWall] }
    | { readonly why: 'too-few-lengths'; readonly walls: readonly RoomWall[] }
    /** A wall without a length would have to run backwards. */
    | { readonly why: 'runs-backwards'; readonly wall: RoomWall }
    | { readonly why: 'does-not-close'; readonly gap: Spot; readonly last: RoomWall };

/** A tape across a room tells no less; round a room more is a mistake. Common practice, no source. */
export const TELLS: Ticks = TICKS_PER_INCH / 16;
export const MOST_OPEN: Ticks = TICKS_PER_INCH / 4;

/** Undefined where not enough is known, or a wall has no length that could be drawn. */
export function outlineOf({ walls, diagonals }: Pick<Room, 'walls' | 'diagonals'>): Outline | Unclear | undefined {
    const known = ({ lost, length, bearing }: RoomWall): boolean => !lost && (!length || length.value.ticks > 0) && Number.isFinite(bearing);
    if (walls.length < 3 || !walls.every(known)) return undefined;
    const north = walls.findIndex(({ bearing }) => bearing === 90);
    const around = [0, 1, 2, 3].map(i => walls[(north + i) % walls.length]!);
    const square = walls.length === 4 && north >= 0 && around.every((wall, i) => wall.length && wall.bearing === (90 * (i + 1)) % 360);
    return square ? fourWalls(walls, around, north, diagonals) : byBearings(walls, diagonals);
}

function lengthOf(wall: RoomWall): Ticks {
    return wall.length!.value.ticks;
}

/** Four walls: a rectangle, or what the first diagonal makes of them. */
function fourWalls(walls: readonly RoomWall[], around: readonly RoomWall[], north: number, diagonals: readonly Diagonal[]): Outline | Unclear {
    const [n, e, s, w] = around as [RoomWall, RoomWall, RoomWall, RoomWall];
    const pairs = ([[n, s], [e, w]] as const).filter(([a, b]) => lengthOf(a) !== lengthOf(b));
    const [first, ...others] = diagonals;
    const [width, length] = [lengthOf(n), lengthOf(e)], square = (diagonal: Diagonal): Ticks => Math.round(Math.hypot(...spanOf(diagonal, width, length)));
    if (pairs.length > 0 && !first) return { why: 'opposite-walls-differ', walls: pairs };
    if (pairs.length === 0 && (!first || Math.abs(first.ticks - square(first)) <= TELLS)) {
        return inBox(rolled([{ x: 0, y: 0 }, { x: width, y: 0 }, { x: width, y: length }, { x: 0, y: length }], north), others);
    }
    if (around.some(wall => wall.assumed) || spanOf(first!, 1, 1).some(span => span === 0)) return { why: 'walls-not-measured', diagonal: first!, square: square(first!) };
    const corners = quadrilateral([n, e, s, w], first!);
    return 'why' in corners ? corners : inBox(rolled(corners, north), others);

    function rolled(from: readonly Spot[], by: number): Spot[] {
        return walls.map((_, i) => from[(i - by + walls.length) % walls.length]!);
    }
}

/** How far apart the corners of a diagonal lie along the north and along the east wall. */
function spanOf({ from, to }: Diagonal, width: number, length: number): [number, number] {
    const [a, b] = [from.split('-'), to.split('-')] as [string[], string[]];
    return [a[1] === b[1] ? 0 : width, a[0] === b[0] ? 0 : length];
}

/** The north wall along x; the diagonal makes two triangles of the room. */
function quadrilateral([n, e, s, w]: readonly [RoomWall, RoomWall, RoomWall, RoomWall], diagonal: Diagonal): Spot[] | Unclear {
    const fromNorthWest = diagonal.from === 'north-west' || diagonal.to === 'north-west';
    const corners = fourCorners([lengthOf(n), lengthOf(e), lengthOf(s), lengthOf(w)], diagonal.ticks, fromNorthWest);
    if (typeof corners !== 'string') return corners;
    const walls = (fromNorthWest ? { first: [n, e], second: [s, w] } : { first: [n, w], second: [e, s] }) as Record<'first' | 'second', [RoomWall, RoomWall]>;
    return { why: 'no-such-triangle', diagonal, walls: walls[corners] };
}

/**
 * Corners north-west, north-east, south-east and south-west of a room with walls north, east, south and west of these lengths, the north wall along x, and
 * with the diagonal from north-west to south-east, or else the other one, so long; or which of the two triangles on it
 * cannot be, the one with the north wall first.
 */
export function fourCorners([N, E, S, W]: readonly [number, number, number, number], d: number, fromNorthWest: boolean): Spot[] | 'first' | 'second' {
    const nw = { x: 0, y: 0 }, ne = { x: N, y: 0 };
    if (fromNorthWest) {
        const alpha = angleBetween(N, d, E), beta = angleBetween(d, W, S);
        if (alpha === undefined) return 'first';
        if (beta === undefined) return 'second';
        return [nw, ne, { x: d * Math.cos(alpha), y: d * Math.sin(alpha) }, { x: W * Math.cos(alpha + beta), y: W * Math.sin(alpha + beta) }];
    }
    const gamma = angleBetween(N, W, d), delta = angleBetween(d, E, S);
    if (gamma === undefined) return 'first';
    if (delta === undefined) return 'second';
    const sw = { x: W * Math.cos(gamma), y: W * Math.sin(gamma) }, way = Math.atan2(sw.y, sw.x - N) - delta;
    return [nw, ne, { x: N + E * Math.cos(way), y: E * Math.sin(way) }, sw];
}

/** Between two sides of a triangle, in radians, by the law of cosines. */
function angleBetween(a: number, b: number, opposite: number): number | undefined {
    const cosine = (a * a + b * b - opposite * opposite) / (2 * a * b);
    return Math.abs(cosine) < 1 ? Math.acos(cosine) : undefined;
}

interface Step { readonly wall: RoomWall; readonly unit: Spot; length: number | undefined }

/** Wall after wall by length and heading. What is not said is found from what is; what does not close is taken off the longest wall that way. */
function byBearings(walls: readonly RoomWall[], diagonals: readonly Diagonal[]): Outline | Unclear {
    const steps = walls.map((wall): Step => ({ wall, unit: unitOf(wall.bearing), length: wall.length?.value.ticks }));
    const open = steps.filter(step => step.length === undefined), alongCompass = walls.every(({ bearing }) => bearing % 45 === 0);
    const gap = gapOf(steps);
    if (open.length > 2) return { why: 'too-few-lengths', walls: open.map(({ wall }) => wall) };
    if (open.length === 2) {
        const [a, b] = open as [Step, Step], under = cross(a.unit, b.unit);
        if (Math.abs(under) < 1e-6) return { why: 'too-few-lengths', walls: [a.wall, b.wall] };
        a.length = Math.round(-cross(gap, b.unit) / under);
        b.length = Math.round(-cross(a.unit, gap) / under);
    } else if (open.length === 1 && alongCompass) open[0]!.length = Math.round(-(gap.x * open[0]!.unit.x + gap.y * open[0]!.unit.y));
    const closes = open.length === 1 && !alongCompass;
    const backwards = steps.find(step => step.length !== undefined && step.length <= 0);
    if (backwards) return { why: 'runs-backwards', wall: backwards.wall };

    const left = closes ? { x: 0, y: 0 } : gapOf(steps), stretched: { wall: RoomWall; to: Ticks }[] = [];
    if (Math.hypot(left.x, left.y) > MOST_OPEN) return { why: 'does-not-close', gap: left, last: walls.at(-1)! };
    for (const axis of ['x', 'y'] as const) {
        const longest = steps.filter(({ unit, length }) => Math.abs(unit[axis]) === 1 && length !== undefined).sort((a, b) => b.length! - a.length!)[0];
        if (closes || !longest || Math.round(left[axis]) === 0) continue;
        longest.length = longest.length! - Math.round(left[axis]) * longest.unit[axis];
        if (longest.wall.length) stretched.push({ wall: longest.wall, to: longest.length });
    }
    let at = { x: 0, y: 0 };
    const first = closes ? steps.indexOf(open[0]!) + 1 : 0, corners: Spot[] = [];
    for (let i = 0; i < steps.length; i++) {
        const place = (first + i) % steps.length;
        corners[place] = at;
        const by = movedBy(steps[place]!);
        at = { x: at.x + by.x, y: at.y + by.y };
    }
    return { ...inBox(corners, diagonals), gap: left, stretched };
}

/** Exact along the compass: at 45 degrees as far one way as the other. */
function unitOf(bearing: number): Spot {
    const clean = (value: number): number => (Math.abs(value) < 1e-12 ? 0 : Math.abs(Math.abs(value) - 1) < 1e-12 ? Math.sign(value) : value);
    const radians = bearing * Math.PI / 180;
    if (bearing % 90 === 45) return { x: Math.SQRT1_2 * Math.sign(Math.sin(radians)), y: Math.SQRT1_2 * -Math.sign(Math.cos(radians)) };
    return { x: clean(Math.sin(radians)), y: clean(-Math.cos(radians)) + 0 };
}

function movedBy({ wall: { bearing }, unit, length = 0 }: Step): Spot {
    if (bearing % 90 !== 45) return { x: unit.x * length, y: unit.y * length };
    const each = Math.round(length * Math.SQRT1_2);
    return { x: each * Math.sign(unit.x), y: each * Math.sign(unit.y) };
}

function gapOf(steps: readonly Step[]): Spot {
    return steps.map(movedBy).reduce((sum, by) => ({ x: sum.x + by.x, y: sum.y + by.y }), { x: 0, y: 0 });
}

function cross(a: Spot, b: Spot): number {
    return a.x * b.y - a.y * b.x;
}

/** In whole ticks, from the north-west corner of the box round them. */
function inBox(from: readonly Spot[], diagonals: readonly Diagonal[]): Outline {
    const west = Math.min(...from.map(({ x }) => x)), north = Math.min(...from.map(({ y }) => y));
    const corners = from.map(({ x, y }) => ({ x: Math.round(x - west) + 0, y: Math.round(y - north) + 0 }));
    const checks = diagonals.map(diagonal => {
        const [a, b] = [cornerAt(corners, diagonal.from), cornerAt(corners, diagonal.to)];
        return { diagonal, is: Math.round(Math.hypot(a.x - b.x, a.y - b.y)) };
    });
    const [width, length] = [Math.max(...corners.map(({ x }) => x)), Math.max(...corners.map(({ y }) => y))];
    return { corners, width, length, gap: { x: 0, y: 0 }, stretched: [], checks };
}

/** The corner that lies farthest that way. */
function cornerAt(corners: readonly Spot[], corner: Corner): Spot {
    const [down, across] = [corner.startsWith('south') ? 1 : -1, corner.endsWith('east') ? 1 : -1];
    const reach = ({ x, y }: Spot): number => across * x + down * y;
    return corners.reduce((best, one) => (reach(one) > reach(best) ? one : best));
}
