import { atKey } from '../plain/at-key.ts';
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
    private readonly flats: readonly Flat[];
    private readonly near: Near;

    constructor(readonly readings: readonly Reading[]) {
        this.triangles = triangulate(readings);
        this.flats = this.triangles.map(([a, b, c], i) => flatOver(i, readings[a]!, readings[b]!, readings[c]!));
        this.near = new Near(this.flats);
    }

    /** The ceiling there, up from the level line, in ticks; undefined where no three readings stand around it. */
    at(point: Point): number | undefined {
        return this.near.to(point, point).find(each => isOver(each, point))?.height(point);
    }

    /** What is known of the ceiling along a straight line, in stretches; with nothing known there is none. */
    along(from: Point, to: Point): Known[] {
        const x = to.x - from.x, y = to.y - from.y, length = Math.hypot(x, y);
        if (length === 0) return [];
        const flats = this.near.to(from, to);
        const crossed = flats.flatMap(({ corners }) => corners.flatMap((a, i) => crossingsWith([a, corners[(i + 1) % 3]!], from, { x, y })));
        const parts = [0, ...crossed.filter(part => part > 0 && part < 1).sort((a, b) => a - b), 1]
            .filter((part, i, all) => i === 0 || part - all[i - 1]! > SAME);
        const pointAt = (part: number): Point => ({ x: from.x + x * part, y: from.y + y * part });
        const stretches: Station[][] = [];
        let open: Station[] | undefined;
        for (let i = 0; i + 1 < parts.length; i++) {
            const begin = parts[i]!, end = parts[i + 1]!, flat = flats.find(each => isOver(each, pointAt((begin + end) / 2)));
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

/** Triangles by where they are: a raster over the room, in each of whose cells stand those that reach into it. */
class Near {
    private readonly cells = new Map<number, Flat[]>();
    private readonly west: number;
    private readonly north: number;
    private readonly size: number;
    private readonly across: number;

    constructor(flats: readonly Flat[]) {
        const all = boxRound(flats.flatMap(({ corners }) => corners));
        this.west = all.west;
        this.north = all.north;
        // some two triangles to a cell where they are alike; slivers over the whole room stand in every cell, so there are not too many
        this.across = Math.min(MOST_ACROSS, Math.max(1, Math.ceil(Math.sqrt(flats.length / 2))));
        this.size = Math.max(1, all.east - all.west, all.south - all.north) / this.across;
        for (const flat of flats) {
            const box = boxRound(flat.corners);
            for (const cell of this.cellsOf(box.west, box.east, box.north, box.south)) atKey(this.cells, cell, () => []).push(flat);
        }
    }

    /** Those that may reach the box round a line, in their order. */
    to(from: Point, to: Point): readonly Flat[] {
        const box = boxRound([from, to]), cells = this.cellsOf(box.west, box.east, box.north, box.south);
        const [only] = cells;
        if (cells.length === 1) return this.cells.get(only!) ?? [];
        return [...new Set(cells.flatMap(cell => this.cells.get(cell) ?? []))].sort((a, b) => a.order - b.order);
    }

    private cellsOf(west: number, east: number, north: number, south: number): number[] {
        const column = (x: number): number => Math.min(this.across - 1, Math.max(0, Math.floor((x - this.west) / this.size)));
        const row = (y: number): number => Math.min(this.across - 1, Math.max(0, Math.floor((y - this.north) / this.size)));
        const cells: number[] = [];
        // what touches an edge is over it: a hair more to every side
        for (let i = row(north - TOUCHES); i <= row(south + TOUCHES); i++) {
            for (let j = column(west - TOUCHES); j <= column(east + TOUCHES); j++) cells.push(i * this.across + j);
        }
        return cells;
    }
}

const MOST_ACROSS = 32;

function boxRound(points: readonly Point[]): { west: number; east: number; north: number; south: number } {
    const box = { west: Infinity, east: -Infinity, north: Infinity, south: -Infinity };
    for (const { x, y } of points) {
        if (x < box.west) box.west = x;
        if (x > box.east) box.east = x;
        if (y < box.north) box.north = y;
        if (y > box.south) box.south = y;
    }
    return box;
}
/** Parts of a line nearer than this are one place: less than a tick of the longest wall. */
const SAME = 1e-8;

interface Flat {
    readonly order: number;
    readonly corners: readonly [Reading, Reading, Reading];
    /** How long each is that leads away from a corner. */
    readonly edges: readonly [number, number, number];
    height(point: Point): number;
}

function flatOver(order: number, a: Reading, b: Reading, c: Reading): Flat {
    const whole = cross(a, b, c), long = (from: Point, to: Point): number => Math.hypot(to.x - from.x, to.y - from.y);
    return {
        order, corners: [a, b, c], edges: [long(a, b), long(b, c), long(c, a)],
        height: point => (a.up * cross(point, b, c) + b.up * cross(a, point, c) + c.up * cross(a, b, point)) / whole,
    };
}

/** Twice the area of a, b, c: positive where they run clockwise on the plan. */
function cross(a: Point, b: Point, c: Point): number {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/** On an edge it is over both. */
function isOver({ corners: [a, b, c], edges: [ab, bc, ca] }: Flat, point: Point): boolean {
    return cross(a, b, point) >= -TOUCHES * ab && cross(b, c, point) >= -TOUCHES * bc && cross(c, a, point) >= -TOUCHES * ca;
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
