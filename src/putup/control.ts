import type { Ceiling, Line } from '../ceiling/model.ts';
import { crossing, lineThrough } from '../plane/line.ts';
import { partsInside } from '../plane/parts-inside.ts';
import { distance, type Point } from '../plane/point.ts';
import { TICKS_PER_FOOT, TICKS_PER_MM, type Ticks } from '../quantity/ticks.ts';

/**
 * What the layout on the ceiling is squared by, measured between centers of lines; ticks.
 *
 * - `four`: two lines of each direction, where they cross: what is between them along each, and both diagonals, from the north-west (`falling`) and from the
 *   south-west (`rising`).
 * - `three`: of two lines that cross one leg along each from the crossing on, and what is between their ends.
 */
export type Control =
    | {
        readonly kind: 'four'; readonly lines: readonly [west: string, east: string, north: string, south: string];
        readonly north: Ticks; readonly south: Ticks; readonly west: Ticks; readonly east: Ticks; readonly falling: Ticks; readonly rising: Ticks;
    }
    | { readonly kind: 'three'; readonly lines: readonly [string, string]; readonly legs: readonly [Ticks, Ticks]; readonly between: Ticks };

/** So many lines from either side of the room are looked at: the largest rectangle is of outer ones. */
const FROM_EITHER_SIDE = 6;

/**
 * The largest four lines between whose crossings a tape can be pulled in the room, past corners of walls that jut into it; where there are none, two lines that
 * cross and the longest legs of 3 to 4 beside them. Null where no lines cross.
 */
export function controlOf({ lines, walls, room: { job } }: Pick<Ceiling, 'lines' | 'walls' | 'room'>): Control | null {
    const upright = outer(lines.filter(({ runs }) => runs === 'north-south')), level = outer(lines.filter(({ runs }) => runs === 'east-west'));
    const floor = walls.map(({ from }) => from), fits = (a: Point, b: Point): boolean => isWithin(a, b, floor);
    const fours = pairsOf(upright).flatMap(([west, east]) => pairsOf(level).flatMap(([north, south]) => fourOf([west, east, north, south]) ?? []));
    const four = fours.sort((a, b) => sizeOf(b) - sizeOf(a)).find(({ corners: [nw, ne, se, sw] }) =>
        [[nw, ne], [ne, se], [se, sw], [sw, nw], [nw, se], [sw, ne]].every(([a, b]) => fits(a!, b!)));
    if (four) { const { corners: _, ...own } = four; return own; }
    const leg = job.show.value === 'millimeters' ? 300 * TICKS_PER_MM : TICKS_PER_FOOT;
    const threes = upright.flatMap(one => level.flatMap(other => threeOf(one, other, leg, fits) ?? []));
    return threes.sort((a, b) => b.between - a.between)[0] ?? null;
}

function outer(lines: readonly Line[]): Line[] {
    return lines.length <= 2 * FROM_EITHER_SIDE ? [...lines] : [...lines.slice(0, FROM_EITHER_SIDE), ...lines.slice(-FROM_EITHER_SIDE)];
}
function pairsOf(lines: readonly Line[]): (readonly [Line, Line])[] {
    return lines.flatMap((one, i) => lines.slice(i + 1).map(other => [one, other] as const));
}

/** As an area is: one that is long and narrow tells little of what is square. */
function sizeOf({ north, south, west, east }: Pick<Four, 'north' | 'south' | 'west' | 'east'>): number {
    return Math.min(north, south) * Math.min(west, east);
}

type Four = Extract<Control, { kind: 'four' }> & { readonly corners: readonly [Point, Point, Point, Point] };

function fourOf([west, east, north, south]: readonly [Line, Line, Line, Line]): Four | undefined {
    const corners = [meeting(west, north), meeting(east, north), meeting(east, south), meeting(west, south)], [nw, ne, se, sw] = corners;
    if (!nw || !ne || !se || !sw) return undefined;
    return {
        kind: 'four', lines: [west.name, east.name, north.name, south.name], corners: [nw, ne, se, sw],
        north: distance(nw, ne), south: distance(sw, se), west: distance(nw, sw), east: distance(ne, se), falling: distance(nw, se), rising: distance(sw, ne),
    };
}

function meeting(one: Line, other: Line): Point | undefined {
    return crossing(lineThrough(one.spot, one.heading), lineThrough(other.spot, other.heading));
}

/** Legs of 3 and 4 times as many feet, or of 300 mm, as go into the room, on whichever sides of the crossing they do. */
function threeOf(one: Line, other: Line, leg: Ticks, fits: (a: Point, b: Point) => boolean): Extract<Control, { kind: 'three' }> | undefined {
    const at = meeting(one, other);
    if (!at) return undefined;
    const end = ({ heading: { x, y } }: Line, far: number): Point => ({ x: at.x + x / Math.hypot(x, y) * far, y: at.y + y / Math.hypot(x, y) * far });
    for (let times = MOST_LEGS; times > 0; times--) {
        for (const legs of [[3, 4], [4, 3]] as const) for (const [a, b] of [[1, 1], [1, -1], [-1, 1], [-1, -1]] as const) {
            const ends = [end(one, a * legs[0] * times * leg), end(other, b * legs[1] * times * leg)] as const;
            if (fits(at, ends[0]) && fits(at, ends[1]) && fits(...ends)) {
                return { kind: 'three', lines: [one.name, other.name], legs: [legs[0] * times * leg, legs[1] * times * leg], between: distance(...ends) };
            }
        }
    }
    return undefined;
}
const MOST_LEGS = 5;

/** Whether a tape can be pulled straight from one to the other, touching walls at most. */
function isWithin(a: Point, b: Point, floor: readonly Point[]): boolean {
    const parts = partsInside([a, b], floor), [part] = parts;
    return parts.length === 1 && distance(part![0]!, a) < 1 && distance(part!.at(-1)!, b) < 1;
}
