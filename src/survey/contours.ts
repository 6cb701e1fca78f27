import type { Point } from '../plane/point.ts';
import { inches, millimeters } from '../quantity/rational.ts';
import type { Show } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { heightOf, type Plane, type Surface } from './surface.ts';

/** How far the ceiling is above the plane at each reading; less than nothing where it hangs below. */
export function offPlane({ readings }: Surface, plane: Plane): number[] {
    return readings.map(reading => reading.up - heightOf(plane, reading));
}

/** A line along which the ceiling is so far above the plane. `closed`: it comes back to where it begins. */
export interface Contour { readonly level: Ticks; readonly points: readonly Point[]; readonly closed: boolean }

const STEPS: Readonly<Record<Show, readonly Ticks[]>> = {
    'feet-inches': ['1/32', '1/16', '1/8', '1/4', '1/2', '1', '2', '4', '8'].map(inches), millimeters: [1, 2, 5, 10, 20, 50, 100, 200].map(millimeters),
};
/** More levels than this cannot be told apart on a sheet. */
const MOST_LEVELS = 12;

/** The distance between two contours: a mark that one says, so that there are not too many. */
export function contourStep(offs: readonly number[], show: Show): Ticks {
    const { least, most } = rangeOf(offs), steps = STEPS[show];
    return steps.find(step => (most - least) / step <= MOST_LEVELS) ?? steps.at(-1)!;
}

/**
 * Contours of the ceiling over the plane, flat over each triangle, at every multiple of the step. A reading that lies on a level counts as above it, so that
 * each triangle is crossed by a level once or not at all; neighbors share the crossing of their common edge, and by these the pieces are joined.
 */
export function contoursOf(surface: Surface, plane: Plane, step: Ticks): Contour[] {
    const offs = offPlane(surface, plane), { least, most } = rangeOf(offs), contours: Contour[] = [];
    for (let level = Math.ceil(least / step) * step; level <= most; level += step) contours.push(...contoursAt(surface, offs, level));
    return contours;
}

function contoursAt({ triangles, readings }: Surface, offs: readonly number[], level: Ticks): Contour[] {
    const isAbove = (i: number): boolean => offs[i]! >= level;
    const points = new Map<string, Point>(), joined = new Map<string, string[]>();
    const crossing = (a: number, b: number): string => {
        const [i, j] = a < b ? [a, b] : [b, a], key = `${i} ${j}`;
        if (!points.has(key)) {
            const share = (level - offs[i]!) / (offs[j]! - offs[i]!), from = readings[i]!, to = readings[j]!;
            points.set(key, { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share });
            joined.set(key, []);
        }
        return key;
    };
    for (const [a, b, c] of triangles) {
        const [one, other] = ([[a, b], [b, c], [c, a]] as const).filter(([from, to]) => isAbove(from) !== isAbove(to)).map(([from, to]) => crossing(from, to));
        if (one === undefined || other === undefined) continue;
        joined.get(one)!.push(other);
        joined.get(other)!.push(one);
    }
    const seen = new Set<string>();
    const follow = (first: string): string[] => {
        const way: string[] = [];
        for (let at: string | undefined = first; at !== undefined; at = joined.get(at)!.find(next => !seen.has(next))) {
            seen.add(at);
            way.push(at);
        }
        return way;
    };
    // those that end at the edge of what is known begin there; what is left goes round
    const contours: Contour[] = [], place = (way: readonly string[], closed: boolean): void => {
        if (way.length > 1) contours.push({ level, points: way.map(key => points.get(key)!), closed });
    };
    for (const [key, next] of joined) if (next.length === 1 && !seen.has(key)) place(follow(key), false);
    for (const key of joined.keys()) if (!seen.has(key)) place(follow(key), true);
    return contours;
}

/** A place where the ceiling hangs lowest, or is highest, among all around. */
export interface Swell extends Point {
    readonly kind: 'hump' | 'hollow';
    /** Among its kind, the most prominent first. */
    readonly number: number;
    /** Above the plane; less than nothing where it hangs below. */
    readonly off: number;
}

/**
 * Humps and hollows: readings that no neighbor hangs lower, or higher, than, and that one cannot leave for a lower (higher) one without rising (falling)
 * by `least`: their persistence (Edelsbrunner, Letscher, Zomorodian 2002). The most prominent first.
 */
export function swellsOf(surface: Surface, plane: Plane, least: Ticks): Swell[] {
    const offs = offPlane(surface, plane), { least: lowest, most } = rangeOf(offs);
    const humps = peaks(surface, offs.map(off => -off), least), hollows = peaks(surface, offs, least);
    if (most - lowest < least) return [];
    // the lowest and the highest of all stand out by the whole difference
    const found = [...humps.map(each => ({ ...each, kind: 'hump' as const })), ...hollows.map(each => ({ ...each, kind: 'hollow' as const }))]
        .map(each => ({ ...each, by: Math.min(each.by, most - lowest), off: offs[each.at]! }))
        .sort((a, b) => b.by - a.by || Math.abs(b.off) - Math.abs(a.off) || a.at - b.at);
    const count = { hump: 0, hollow: 0 };
    return found.map(({ at, kind, off }) => ({ kind, number: ++count[kind], off, x: surface.readings[at]!.x, y: surface.readings[at]!.y }));
}

/** Tops, from the highest down: where two that have grown together meet, the lower one ends, and has stood out by what it was above that place. */
function peaks({ triangles }: Surface, heights: readonly number[], least: Ticks): { at: number; by: number }[] {
    const neighbors = heights.map(() => new Set<number>());
    for (const [a, b, c] of triangles) for (const [from, to] of [[a, b], [b, c], [c, a]] as const) {
        neighbors[from]!.add(to);
        neighbors[to]!.add(from);
    }
    const top = new Map<number, number>(), found: { at: number; by: number }[] = [];
    const topOf = (i: number): number => {
        let at = i;
        for (let over = top.get(at)!; over !== at; over = top.get(at)!) {
            top.set(at, top.get(over)!);
            at = over;
        }
        return at;
    };
    const order = heights.map((_, i) => i).sort((a, b) => heights[b]! - heights[a]! || a - b), rank = new Map(order.map((i, nth) => [i, nth]));
    for (const i of order) {
        if (neighbors[i]!.size === 0) continue;
        top.set(i, i);
        for (const next of neighbors[i]!) {
            if (!top.has(next)) continue;
            const [higher, lower] = [topOf(next), topOf(i)].sort((a, b) => rank.get(a)! - rank.get(b)!) as [number, number];
            if (higher === lower) continue;
            if (lower !== i && heights[lower]! - heights[i]! >= least) found.push({ at: lower, by: heights[lower]! - heights[i]! });
            top.set(lower, higher);
        }
    }
    const [first] = order.filter(i => top.has(i));
    return first === undefined ? [] : [{ at: first, by: Infinity }, ...found];
}

function rangeOf(offs: readonly number[]): { least: number; most: number } {
    return { least: offs.reduce((a, b) => Math.min(a, b), Infinity), most: offs.reduce((a, b) => Math.max(a, b), -Infinity) };
}

/** The edge of what is known, clockwise: beyond it no three readings stand around a place. */
export function edgeOfKnown({ triangles, readings }: Surface): Point[] {
    const next = new Map<number, number>();
    const inner = new Set(triangles.flatMap(([a, b, c]) => [`${a} ${b}`, `${b} ${c}`, `${c} ${a}`]));
    for (const [a, b, c] of triangles) for (const [from, to] of [[a, b], [b, c], [c, a]] as const) if (!inner.has(`${to} ${from}`)) next.set(from, to);
    const [first] = next.keys(), way: Point[] = [];
    if (first === undefined) return [];
    let at = first;
    do {
        way.push(readings[at]!);
        at = next.get(at)!;
    } while (at !== first && way.length <= next.size);
    return way;
}
