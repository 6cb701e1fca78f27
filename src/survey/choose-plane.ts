import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Point } from '../plane/point.ts';
import { deepestHollow, type SideUnder } from './sides.ts';
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
export function choosePlane(sides: readonly SideUnder[], hanging: Hanging): Chosen | undefined {
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

    constructor(known: readonly SideUnder[]) {
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
        const { x, y } = this.middle;
        const far = most(this.sides.flatMap(({ stations }) => stations.map(one => Math.abs(one.x - x) + Math.abs(one.y - y))));
        let best = level, cells: Cell[] = [{ east: 0, south: 0, half: slope }], looks = 0;
        const isBetter = (one: Bound, than: Bound): boolean =>
            one.scribed < than.scribed || one.scribed === than.scribed && one.deepest < than.deepest - SAME_PLANE;
        // twice half a cell is what two planes of it can differ by, each from the middle of the room
        while (cells.length > 0 && looks < MOST_LOOKS) {
            const open = cells.map(cell => {
                looks++;
                const tilted = this.tilted(cell.east, cell.south);
                if (isBetter(tilted, best)) best = tilted;
                return { cell, bound: this.boundOf(cell) };
            });
            cells = open.filter(({ cell, bound }) => cell.half * far > SAME_PLANE / 2 && isBetter(bound, best)).flatMap(({ cell }) => quartered(cell));
        }
        return { ...this.at(best.plane, cells.length === 0) };
    }

    /** What no plane of these tilts can go under: the heights that bind in the middle of the cell, at their least over the cell. */
    private boundOf({ east, south, half }: Cell): Bound {
        const rise = ({ x, y, up }: Station): number => up - east * x - south * y;
        let lowest = -Infinity, binds: Station | undefined;
        for (const { hollow, stations } of this.sides) {
            for (const station of stations) {
                const height = rise(station) - hollow;
                if (height > lowest) [lowest, binds] = [height, station];
            }
        }
        const depths = this.sides.map(({ heldDown, stations }) => {
            let depth = -Infinity;
            for (const station of stations) {
                const least = lowest - rise(station) - half * (Math.abs(station.x - binds!.x) + Math.abs(station.y - binds!.y));
                if (least > depth) depth = least;
            }
            return depth - heldDown;
        });
        return { scribed: depths.filter(depth => depth > SCRIBED).length, deepest: most(depths) };
    }
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
