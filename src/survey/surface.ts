import { triangulate, type Triangle } from '../plane/triangulation.ts';
import type { Point } from '../plane/point.ts';
import type { Ticks } from '../quantity/ticks.ts';

/** A place on the plan, in ticks from the corner where x and y begin, and what was read there from the level line up to the ceiling. */
interface Reading extends Point { readonly up: Ticks }

/** A plane over the room, up from the level line: `at` where x and y begin, and what it rises a tick to the east and to the south. */
export interface Plane { readonly at: number; readonly east: number; readonly south: number }

export function heightOf({ at, east, south }: Plane, { x, y }: Point): number {
    return at + east * x + south * y;
}

/** A place on the way along a straight line: so many ticks from its beginning, and the ceiling there, up from the level line. */
export interface Station extends Point { readonly along: number; readonly up: number }

/** A piece of a straight line over which the ceiling is known: between neighboring stations it runs straight. */
export type Known = readonly Station[];

/**
 * The ceiling between its readings: flat over each triangle of their Delaunay triangulation, so that it passes through every reading and between three
 * of them never goes above the highest or below the lowest. Over no triangle it is unknown. Piecewise linear interpolation: its error over a triangle is at
 * most half the greatest curvature of the ceiling times the square of the radius of the circle round it (Waldron 1998).
 */
export class Surface {
    readonly triangles: readonly Triangle[];
    private readonly edges: readonly (readonly [Point, Point])[];
    private readonly flats: readonly Flat[];

    constructor(readonly readings: readonly Reading[]) {
        this.triangles = triangulate(readings);
        this.flats = this.triangles.map(([a, b, c]) => flatOver(readings[a]!, readings[b]!, readings[c]!));
        const edges = new Map<string, readonly [Point, Point]>();
        for (const triangle of this.triangles) {
            triangle.forEach((a, i) => {
                const b = triangle[(i + 1) % 3]!;
                edges.set(a < b ? `${a} ${b}` : `${b} ${a}`, [readings[a]!, readings[b]!]);
            });
        }
        this.edges = [...edges.values()];
    }

    /** The ceiling there, up from the level line, in ticks; undefined where no three readings stand around it. */
    at(point: Point): number | undefined {
        return this.flats.find(flat => isOver(flat, point))?.height(point);
    }

    /** What is known of the ceiling along a straight line, in stretches; with nothing known there is none. */
    along(from: Point, to: Point): Known[] {
        const x = to.x - from.x, y = to.y - from.y, length = Math.hypot(x, y);
        if (length === 0) return [];
        const crossed = this.edges.flatMap(edge => crossingsWith(edge, from, { x, y }));
        const parts = [0, ...crossed.filter(part => part > 0 && part < 1).sort((a, b) => a - b), 1]
            .filter((part, i, all) => i === 0 || part - all[i - 1]! > SAME);
        const pointAt = (part: number): Point => ({ x: from.x + x * part, y: from.y + y * part });
        const stretches: Station[][] = [];
        let open: Station[] | undefined;
        for (let i = 0; i + 1 < parts.length; i++) {
            const begin = parts[i]!, end = parts[i + 1]!, flat = this.flats.find(each => isOver(each, pointAt((begin + end) / 2)));
            if (!flat) {
                open = undefined;
                continue;
            }
            const station = (part: number): Station => ({ ...pointAt(part), along: part * length, up: flat.height(pointAt(part)) });
            if (!open) stretches.push(open = [station(begin)]);
            open.push(station(end));
        }
        return stretches;
    }
}
/** Parts of a line nearer than this are one place: less than a tick of the longest wall. */
const SAME = 1e-8;

interface Flat { readonly corners: readonly [Reading, Reading, Reading]; height(point: Point): number }

function flatOver(a: Reading, b: Reading, c: Reading): Flat {
    const whole = cross(a, b, c);
    return { corners: [a, b, c], height: point => (a.up * cross(point, b, c) + b.up * cross(a, point, c) + c.up * cross(a, b, point)) / whole };
}

/** Twice the area of a, b, c: positive where they run clockwise on the plan. */
function cross(a: Point, b: Point, c: Point): number {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/** On an edge it is over both. */
function isOver({ corners: [a, b, c] }: Flat, point: Point): boolean {
    return isInside(a, b, point) && isInside(b, c, point) && isInside(c, a, point);
}

function isInside(a: Point, b: Point, point: Point): boolean {
    return cross(a, b, point) >= -TOUCHES * Math.hypot(b.x - a.x, b.y - a.y);
}
/** Ticks off an edge that are still on it: places between readings are no whole numbers. */
const TOUCHES = 1e-3;

/** Where an edge crosses the line, as parts of it; both ends of an edge that lies on it. */
function crossingsWith([a, b]: readonly [Point, Point], from: Point, way: Point): number[] {
    const off = (point: Point): number => way.x * (point.y - from.y) - way.y * (point.x - from.x);
    const offA = off(a), offB = off(b), squared = way.x * way.x + way.y * way.y;
    const part = (point: Point): number => ((point.x - from.x) * way.x + (point.y - from.y) * way.y) / squared;
    if (offA === 0 || offB === 0) return [...offA === 0 ? [part(a)] : [], ...offB === 0 ? [part(b)] : []];
    if (offA > 0 === offB > 0) return [];
    const share = offA / (offA - offB);
    return [part({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share })];
}
