import { distance } from '../plane/point.ts';
import type { Direction, Grid, Laying } from '../job/model.ts';
import type { Spot } from '../job/outline.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Trouble } from './model.ts';
import { isLevel, type Shape, type ShapedWall } from './shape.ts';

/**
 * How the lines of one direction lie in a room: what is divided, and where a line runs whose center stands at a place of it.
 *
 *     along the compass   the box round the room, or one wall
 *     by a wall           parallel to it, divided square to the lines between the corners at the north or west end; or square to it, divided along it
 *     split               bisecting the angle of the two walls that they run between, divided square to the lines between the middles of these walls
 *     fanned              each wall that they end at is divided by itself
 *     falling, rising     at 45 degrees, the centers in equal parts from corner to corner
 *
 * What runs along the walls is taken straight, and not divided by the sine of an angle: common practice, no source.
 */
interface Laid {
    /** What is divided; and of fanned lines, the same at their far end. */
    readonly over: Stretch; readonly far?: Stretch;
    /** Its center at that place of the stretch, and of fanned lines of the far one. */
    lineAt(center: number, far: number): Placed;
    /** In equal parts by the centers of the lines, and not by the faces of the coffers. */
    readonly byCenters: boolean;
    readonly alongCompass: boolean;
}
/** `origin`: where on the plan it begins, along x or y where the lines run along the compass. `ends`: the walls at its ends. */
export interface Stretch { readonly room: Ticks; readonly origin: Ticks; readonly ends: readonly [string | undefined, string | undefined] }
/** A spot on the center line, and the way it runs: whole numbers, to the south or east. */
export interface Placed { readonly spot: Spot; readonly heading: Spot }

/** Undefined with a trouble where the room has no such walls. */
export function layingOf(runs: Direction, grid: Grid, shape: Shape, troubles: Trouble[]): Laid | undefined {
    const upright = runs === 'north-south', said = upright ? grid.layNorthSouth : grid.layEastWest;
    if (said?.how === 'falling' || said?.how === 'rising') return atHalfRight(said.how, shape);
    const along = upright ? grid.alongNorth : grid.alongEast, wall = along && shape.walls.find(({ name }) => name === along.value);
    if (!shape.square || said && said.how !== 'by-wall') return askew(runs, said, shape, wall, troubles);
    return alongCompass(upright, shape, wall);
}

function alongCompass(upright: boolean, { walls, width, length }: Shape, wall: ShapedWall | undefined): Laid {
    const place = ({ x, y }: Spot): Ticks => (upright ? x : y), far = upright ? width : length;
    const ends = wall ? [place(wall.from), place(wall.to)].sort((a, b) => a - b) as [Ticks, Ticks] : [0, far] as const;
    const limits = ends.map(end => walls.find(each => place(each.from) === end && place(each.to) === end && (!wall || touches(each, wall)))?.name);
    const lineAt = (center: number): Placed => {
        const at = ends[0] + center;
        return upright ? { spot: { x: at, y: 0 }, heading: { x: 0, y: 1 } } : { spot: { x: 0, y: at }, heading: { x: 1, y: 0 } };
    };
    return { over: { room: ends[1] - ends[0], origin: ends[0], ends: [limits[0], limits[1]] }, lineAt, byCenters: false, alongCompass: true };
}

function touches(a: ShapedWall, b: ShapedWall): boolean {
    const same = (p: Spot, q: Spot): boolean => p.x === q.x && p.y === q.y;
    return same(a.to, b.from) || same(a.from, b.to);
}

/** In a room with walls that do not run along the compass. */
function askew(runs: Direction, said: Laying | undefined, shape: Shape, along: ShapedWall | undefined, troubles: Trouble[]): Laid | undefined {
    const upright = runs === 'north-south', { walls } = shape, four = fourOf(walls);
    if (said?.how === 'split' || said?.how === 'fanned') {
        if (!four) {
            troubles.push({
                kind: 'not-supported', what: `lines that are ${said.how} in a room that has not four walls`, because: 'they lie between two walls that are across from each other',
                instead: 'lines laid by one of its walls', at: said.at,
            });
            return undefined;
        }
        return said.how === 'split' ? split(upright, four) : fanned(upright, four);
    }
    const wall = walls.find(({ name }) => name === said?.wall?.value) ?? four?.north ?? walls[0]!;
    const way = unit(wall), parallel = isLevel(wall) !== upright;
    const u = oriented(parallel ? way : { x: -way.y, y: way.x }, upright), across = upright ? { x: u.y, y: -u.x } : { x: -u.y, y: u.x };
    const reach = ({ x, y }: Spot): number => x * across.x + y * across.y;
    const sorted = (spots: Spot[]): Spot[] => spots.sort((a, b) => reach(a) - reach(b));
    const limits = along ? sorted([along.from, along.to]) : !four ? sorted(walls.map(({ from }) => from))
        : parallel ? [four.north.from, upright ? four.north.to : four.south.to] : sorted([wall.from, wall.to]);
    const [first, last] = [limits[0]!, limits.at(-1)!];
    const lineAt = (center: number): Placed => ({ spot: { x: first.x + across.x * center, y: first.y + across.y * center }, heading: whole(u) });
    const origin = Math.round(upright ? first.x : first.y);
    // of more than four walls, one that runs along the lines where the stretch ends
    const stands = ({ from, to }: ShapedWall, end: Spot): boolean => [from, to].every(corner => Math.abs(reach(corner) - reach(end)) < 1);
    const endsAt = (end: Spot): string | undefined => walls.find(each => stands(each, end) && (!along || touches(each, along)))?.name;
    const [from, to] = four ? beside(upright, four).map(({ name }) => name) : [endsAt(first), endsAt(last)];
    const room = Math.round(reach(last) - reach(first));
    return { over: { room, origin, ends: [from, to] }, lineAt, byCenters: false, alongCompass: false };
}

function split(upright: boolean, four: Four): Laid {
    const [low, high] = beside(upright, four);
    const [a, b] = [oriented(unit(low), upright), oriented(unit(high), upright)], length = Math.hypot(a.x + b.x, a.y + b.y);
    const u = { x: (a.x + b.x) / length, y: (a.y + b.y) / length }, across = upright ? { x: u.y, y: -u.x } : { x: -u.y, y: u.x };
    const [from, to] = [middle(low), middle(high)];
    const room = Math.round((to.x - from.x) * across.x + (to.y - from.y) * across.y);
    const lineAt = (center: number): Placed => ({ spot: { x: from.x + across.x * center, y: from.y + across.y * center }, heading: whole(u) });
    return { over: { room, origin: Math.round(upright ? from.x : from.y), ends: [low.name, high.name] }, lineAt, byCenters: false, alongCompass: false };
}

function fanned(upright: boolean, four: Four): Laid {
    const [near, far] = beside(!upright, four), [low, high] = beside(upright, four), ends: Stretch['ends'] = [low.name, high.name];
    const fromLow = ({ from, to }: ShapedWall): [Spot, Spot] => ((upright ? from.x > to.x : from.y > to.y) ? [to, from] : [from, to]);
    const at = (wall: ShapedWall, center: number): Spot => {
        const [a, b] = fromLow(wall), share = center / distance(b, a);
        return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
    };
    return {
        over: { room: near.length, origin: 0, ends }, far: { room: far.length, origin: 0, ends }, byCenters: false, alongCompass: false,
        lineAt: (center, there) => {
            const spot = at(near, center), end = at(far, there);
            return { spot, heading: { x: Math.round(end.x - spot.x), y: Math.round(end.y - spot.y) } };
        },
    };
}

/** Falling lines are counted from the west, rising ones from the north. */
function atHalfRight(how: 'falling' | 'rising', { walls }: Shape): Laid {
    const across = how === 'falling' ? { x: Math.SQRT1_2, y: -Math.SQRT1_2 } : { x: Math.SQRT1_2, y: Math.SQRT1_2 }, reach = ({ x, y }: Spot): number => x * across.x + y * across.y;
    const places = walls.map(({ from }) => reach(from)), low = Math.min(...places);
    const heading = how === 'falling' ? { x: 1, y: 1 } : { x: 1, y: -1 };
    const lineAt = (center: number): Placed => ({ spot: { x: Math.round((low + center) * Math.SQRT2), y: 0 }, heading });
    return { over: { room: Math.max(...places) - low, origin: 0, ends: [undefined, undefined] }, lineAt, byCenters: true, alongCompass: false };
}

interface Four { readonly north: ShapedWall; readonly east: ShapedWall; readonly south: ShapedWall; readonly west: ShapedWall }
/** The walls on either side of lines that run so, the lower coordinate first. */
function beside(upright: boolean, { north, east, south, west }: Four): readonly [ShapedWall, ShapedWall] {
    return upright ? [west, east] : [north, south];
}

/** The walls of a room that has four, by the side they lie on. */
function fourOf(walls: readonly ShapedWall[]): Four | undefined {
    if (walls.length !== 4) return undefined;
    const first = walls.reduce((best, wall, i) => (unit(wall).x > unit(walls[best]!).x ? i : best), 0);
    const [north, east, south, west] = [0, 1, 2, 3].map(i => walls[(first + i) % 4]!) as [ShapedWall, ShapedWall, ShapedWall, ShapedWall];
    return { north, east, south, west };
}

function unit({ from, to }: ShapedWall): Spot {
    const length = distance(to, from);
    return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

/** The same direction to the south, or to the east. */
function oriented(u: Spot, upright: boolean): Spot {
    return (upright ? u.y : u.x) < 0 ? { x: -u.x, y: -u.y } : u;
}

function middle({ from, to }: ShapedWall): Spot {
    return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
}

/** A direction in whole numbers, to a ten-millionth. */
function whole({ x, y }: Spot): Spot {
    if (x === 0 || y === 0) return { x: Math.sign(x), y: Math.sign(y) };
    return { x: Math.round(x * FINE), y: Math.round(y * FINE) };
}
const FINE = 2 ** 24;
