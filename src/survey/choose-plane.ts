import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Point } from '../plane/point.ts';
import { deepestHollow, type Bearing } from './sides.ts';
import type { Plane, Station } from './surface.ts';

/** How the sides are to be hung. `slope`: what the plane may rise a tick at most, along and across. */
export type Hanging = { readonly kind: 'level'; readonly reading?: Ticks } | { readonly kind: 'following'; readonly slope: number };

/** A plane for the sides, how many of them have to be scribed to hang by it, and how deep at most. */
export interface Chosen {
    readonly plane: Plane; readonly scribed: number; readonly deepest: number;
    /** No other plane that is allowed leaves fewer sides to be scribed, nor as many less deep, by more than 1/512". Not where the reading was said. */
    readonly proved: boolean;
}

/** Less than this nobody scribes: half a 64th. */
export const SCRIBED: Ticks = inches('1/128');
/** Planes nearer to each other than this, everywhere in the room, are one. */
const SAME_PLANE: Ticks = inches('1/512');
/** As many tilts are looked at, at most. */
const MOST_LOOKS = 60_000;

/**
 * The plane by which sides hang: held down from it as from a flat ceiling. Where the ceiling is below it by more than that, a side is scribed; where it is
 * so far above that trim or blocking no longer laps, it may not be. Among the planes that are allowed it is the one that leaves the fewest sides to be
 * scribed, then the least depth; where no side has to be, the one that stays farthest from both.
 *
 * Of planes of one tilt the lowest at which trim and blocking still lap is best: any higher one scribes no fewer sides, and none less deep. So tilts alone are
 * looked for: each rectangle of them has a least count and a least depth that no tilt in it can go under, and is divided in four until that is no
 * better than the best tilt known (branch and bound).
 */
export function choosePlane(sides: readonly Bearing[], hanging: Hanging): Chosen | undefined {
    const known = sides.filter(side => side.known.length > 0);
    if (known.length === 0) return undefined;
    const problem = new Problem(known);
    if (hanging.kind === 'level' && hanging.reading !== undefined) return problem.at({ at: hanging.reading, east: 0, south: 0 }, false);
    const level = problem.tilted(0, 0);
    // what hangs well by a level is not tilted
    if (hanging.kind === 'level' || problem.isUnbound || level.scribed === 0) return problem.at(level.plane, true);
    return problem.best(hanging.slope, level);
}

interface Over { readonly heldDown: Ticks; readonly hollow: number; readonly stations: readonly Station[] }
interface Tilted { readonly plane: Plane; readonly scribed: number; readonly deepest: number }

class Problem {
    private readonly sides: readonly Over[];
    /** Neither trim nor blocking is there to say how high the sides may hang. */
    readonly isUnbound: boolean;
    private readonly middle: Point;

    constructor(known: readonly Bearing[]) {
        this.sides = known.map(side => ({ heldDown: side.heldDown, hollow: deepestHollow(side) ?? Infinity, stations: side.known.flat() }));
        this.isUnbound = this.sides.every(({ hollow }) => hollow === Infinity);
        const all = this.sides.flatMap(({ stations }) => stations), xs = all.map(({ x }) => x), ys = all.map(({ y }) => y);
        this.middle = { x: (least(xs) + most(xs)) / 2, y: (least(ys) + most(ys)) / 2 };
    }

    at(plane: Plane, proved: boolean): Chosen {
        const depths = this.sides.map(side => this.scribeUnder(side, plane));
        return { plane, scribed: depths.filter(depth => depth > SCRIBED).length, deepest: Math.max(0, most(depths)), proved };
    }

    /** How deep a side has to be scribed; less than nothing: by so much it stays clear of the ceiling. */
    private scribeUnder({ heldDown, stations }: Over, { at, east, south }: Plane): number {
        return most(stations.map(({ x, y, up }) => at + east * x + south * y - up)) - heldDown;
    }

    /** The lowest plane of this tilt at which trim and blocking lap everywhere; half way up to the ceiling where no side comes near it. */
    tilted(east: number, south: number): Tilted {
        const rise = ({ x, y, up }: Station): number => up - east * x - south * y;
        const lowest = this.isUnbound ? least(this.sides.flatMap(({ stations }) => stations.map(rise)))
            : most(this.sides.map(({ hollow, stations }) => most(stations.map(rise)) - hollow));
        const plane = { at: lowest, east, south }, depths = this.sides.map(side => this.scribeUnder(side, plane)), deepest = most(depths);
        const scribed = depths.filter(depth => depth > SCRIBED).length;
        return { plane: deepest < 0 && !this.isUnbound ? { ...plane, at: lowest - deepest / 2 } : plane, scribed, deepest };
    }

    best(slope: number, level: Tilted): Chosen {
        const { x, y } = this.middle, few = new Few(this.sides, slope);
        const far = most(this.sides.flatMap(({ stations }) => stations.map(one => Math.abs(one.x - x) + Math.abs(one.y - y))));
        let best: Bound = level, tilt: Cell = { east: 0, south: 0, half: slope }, cells: Cell[] = [tilt], looks = 0;
        const isBetter = (one: Bound, than: Bound): boolean =>
            one.scribed < than.scribed || one.scribed === than.scribed && one.deepest < than.deepest - SAME_PLANE;
        // twice half a cell is what two planes of it can differ by, each from the middle of the room
        while (cells.length > 0 && looks < MOST_LOOKS) {
            const open = cells.map(cell => {
                looks++;
                const here = few.under(cell, 0);
                if (isBetter(here, best)) [best, tilt] = [here, cell];
                return { cell, bound: few.under(cell, cell.half) };
            });
            cells = open.filter(({ cell, bound }) => cell.half * far > SAME_PLANE / 2 && isBetter(bound, best)).flatMap(({ cell }) => quartered(cell));
        }
        return { ...this.at(best === level ? level.plane : this.tilted(tilt.east, tilt.south).plane, cells.length === 0) };
    }
}

/**
 * The stations that can bind at any tilt that is allowed: one stands back where another is so much higher, or lower, that no tilt makes up for it over
 * the way between them. Of a side few are left, and of all sides together few that keep the plane up. In lists of plain figures, since they are gone
 * through at every look.
 */
class Few {
    /** What the plane may not go under: x, y, and how high there. */
    private readonly low: Float64Array;
    /** What the plane scribes where it is above it, side by side: x, y, and how high there. `ends`: where the next side begins. */
    private readonly high: Float64Array;
    private readonly ends: readonly number[];

    constructor(sides: readonly Over[], slope: number) {
        const low = sides.flatMap(({ hollow, stations }) => stations.map(({ x, y, up }) => ({ x, y, up: up - hollow })));
        this.low = flattened(standing(low, slope));
        const high = sides.map(({ heldDown, stations }) => standing(stations.map(({ x, y, up }) => ({ x, y, up: -up - heldDown })), slope));
        this.high = flattened(high.flat());
        let end = 0;
        this.ends = high.map(each => end += 3 * each.length);
    }

    /** What no plane of these tilts, up to `half` from the middle one, can go under; with none, how the lowest plane of that tilt is. */
    under({ east, south }: Cell, half: number): Bound {
        const { low, high, ends } = this;
        let lowest = -Infinity, x = 0, y = 0, scribed = 0, deepest = -Infinity, at = 0;
        for (let i = 0; i < low.length; i += 3) {
            const height = low[i + 2]! - east * low[i]! - south * low[i + 1]!;
            if (height > lowest) {
                lowest = height;
                x = low[i]!;
                y = low[i + 1]!;
            }
        }
        for (const end of ends) {
            let depth = -Infinity;
            for (; at < end; at += 3) {
                const into = lowest + high[at + 2]! + east * high[at]! + south * high[at + 1]! - half * (Math.abs(high[at]! - x) + Math.abs(high[at + 1]! - y));
                if (into > depth) depth = into;
            }
            if (depth > SCRIBED) scribed++;
            if (depth > deepest) deepest = depth;
        }
        return { scribed, deepest };
    }
}

interface Height extends Point { readonly up: number }

/** The heights that none of the others is above by more than any tilt makes up for. */
function standing(heights: readonly Height[], slope: number): Height[] {
    const left: Height[] = [];
    for (const one of heights.toSorted((a, b) => b.up - a.up)) {
        if (left.every(other => one.up + slope * (Math.abs(one.x - other.x) + Math.abs(one.y - other.y)) > other.up)) left.push(one);
    }
    return left;
}

function flattened(heights: readonly Height[]): Float64Array {
    return Float64Array.from(heights.flatMap(({ x, y, up }) => [x, y, up]));
}
interface Cell { readonly east: number; readonly south: number; readonly half: number }
interface Bound { readonly scribed: number; readonly deepest: number }

function quartered({ east, south, half }: Cell): Cell[] {
    const by = half / 2;
    return [{ east: east - by, south: south - by, half: by }, { east: east + by, south: south - by, half: by },
        { east: east - by, south: south + by, half: by }, { east: east + by, south: south + by, half: by }];
}

function least(numbers: readonly number[]): number {
    return numbers.reduce((a, b) => Math.min(a, b), Infinity);
}
function most(numbers: readonly number[]): number {
    return numbers.reduce((a, b) => Math.max(a, b), -Infinity);
}
