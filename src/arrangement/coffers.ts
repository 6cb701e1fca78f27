import { directionOf } from '../plane/line.ts';
import { cornerAngles, extentOf, placeIn, touch, twiceArea, type Extent, type Polygon } from '../plane/polygon.ts';
import { distance, reach, type Point } from '../plane/point.ts';
import type { Flank } from './carriers.ts';
import { nameOfLine, type CofferLoop, type WalkedEdge, type WalkedLoop } from './coffer-walks.ts';
import { compassOf } from './compass.ts';
import type { Coffer, CofferEdge } from './model.ts';
import type { Stretch } from './piece.ts';
import type { Trouble } from './troubles.ts';
import { tickPoint, type Unit } from './unit.ts';

/** A coffer's loops in units: round it, and round what stands free in it. */
export interface WalkedCoffer {
    readonly number: number; readonly outer: CofferLoop; readonly holes: readonly CofferLoop[];
    /** Every flank that it lies between, in the order of its walk. */
    readonly round: readonly Flank[];
    /** The same round what stands free in it. */
    readonly roundHoles: readonly (readonly Flank[])[];
}

/** Loops that are walked clockwise are coffers; those walked the other way go round what is free in the smallest coffer about them, there has to be one. */
export function numberedCoffers(loops: readonly WalkedLoop[], troubles: Trouble[]): WalkedCoffer[] {
    const measured = loops.map(({ edges: loop, round }) => {
        const corners = loop.map(edge => edge.from);
        return { loop, round, corners, area: twiceArea(corners), extent: extentOf(corners) };
    });
    const outer = measured.filter(({ area }) => area > 0n), inner = measured.filter(({ area }) => area < 0n);
    const holes = new Map<CofferLoop, typeof measured>();
    const bySize = outer.toSorted((a, b) => (a.area < b.area ? -1 : 1));
    for (const hole of inner) {
        // a corner of it may stick out: then it is told, see corners-outside.ts
        const about = bySize.find(({ corners }) => hole.corners.some(corner => placeIn(corners, corner) === 'inside')) ?? bySize.find(({ corners }) => areInEachOther(corners, hole.corners));
        const line = about ? undefined : hole.loop.map(nameOfLine).find(name => name !== undefined);
        if (about) holes.set(about.loop, [...holes.get(about.loop) ?? [], hole]);
        else if (line !== undefined) troubles.push({ kind: 'outside', line });
    }
    return inRows(outer).map(({ loop, round }, i) => {
        const own = holes.get(loop) ?? [];
        return { number: i + 1, outer: loop, holes: own.map(hole => hole.loop), round, roundHoles: own.map(hole => hole.round) };
    });
}

function areInEachOther(one: Polygon, other: Polygon): boolean {
    return one.some((a, i) => other.some((c, k) => touch(a, one[(i + 1) % one.length]!, c, other[(k + 1) % other.length]!)));
}

/**
 * Row by row: the coffer whose top is highest (of several, the westmost) begins a row of all whose tops lie above its middle; these are
 * numbered from the west by their middles, and so on with the rest.
 */
function inRows<T extends { readonly extent: Extent }>(coffers: readonly T[]): T[] {
    const middle = ({ extent: { west, east } }: T): number => west + east;
    const ordered: T[] = [];
    let left = [...coffers].sort((a, b) => a.extent.north - b.extent.north || a.extent.west - b.extent.west);
    while (left.length > 0) {
        const { north, south } = left[0]!.extent;
        const row = left.filter(({ extent }) => 2 * extent.north < north + south);
        ordered.push(...row.sort((a, b) => middle(a) - middle(b) || a.extent.north - b.extent.north));
        left = left.filter(coffer => !row.includes(coffer));
    }
    return ordered;
}

/** The edges of coffers along each flank. */
type EdgesOf = ReadonlyMap<Flank, readonly { readonly edge: WalkedEdge; readonly coffer: number }[]>;
export function edgesByFlank(coffers: readonly WalkedCoffer[]): EdgesOf {
    const found = new Map<Flank, { edge: WalkedEdge; coffer: number }[]>();
    for (const { number, outer, holes } of coffers) for (const loop of [outer, ...holes]) for (const edge of loop) for (const flank of edge.flanks) {
        const there = found.get(flank);
        if (there) there.push({ edge, coffer: number });
        else found.set(flank, [{ edge, coffer: number }]);
    }
    return found;
}

/** The numbers of the coffers that a stretch of a flank's face looks into: several where shallower beams die into it. */
export function coffersAlong(flank: Flank, face: Stretch, edges: EdgesOf, unit: Unit): number[] {
    const way = directionOf(flank.base), length = reach(face.from, face.to, way);
    const looksIn = ({ from, to }: WalkedEdge): boolean =>
        Math.min(length, reach(face.from, to, way)) - Math.max(0, reach(face.from, from, way)) > unit.perTick;
    return [...new Set((edges.get(flank) ?? []).filter(({ edge }) => looksIn(edge)).map(({ coffer }) => coffer))].sort((a, b) => a - b);
}

export function cofferOf({ number, outer, holes }: WalkedCoffer, unit: Unit): Coffer {
    const first = fromNorthWest(outer, unit);
    const area = [outer, ...holes].reduce((sum, loop) => sum + twiceArea(loop.map(edge => edge.from)), 0n);
    return {
        number, edges: edgesOf(first, unit), holes: holes.map(hole => edgesOf(hole, unit)),
        outline: outlineOf(first, unit), holeOutlines: holes.map(hole => outlineOf(hole, unit)),
        area: Number(area) / 2 / unit.perTick ** 2,
    };
}

/** Beginning with the corner that lies farthest to the north-west; of two, to a tick, the one farther north. */
function fromNorthWest(loop: CofferLoop, unit: Unit): CofferLoop {
    const before = (a: Point, b: Point): boolean => {
        const farther = b.x + b.y - (a.x + a.y);
        return Math.abs(farther) > unit.perTick ? farther > 0 : a.y < b.y;
    };
    let first = 0;
    loop.forEach((edge, i) => { if (before(edge.from, loop[first]!.from)) first = i; });
    return [...loop.slice(first), ...loop.slice(0, first)];
}

function edgesOf(loop: CofferLoop, unit: Unit): CofferEdge[] {
    const angles = cornerAngles(loop.map(edge => edge.from));
    return loop.map(({ flanks, line, from, to }, i) => ({
        on: compassOf({ x: 0 - line.a, y: 0 - line.b }), along: [...new Set(flanks.map(flank => flank.of.name))],
        length: distance(from, to) / unit.perTick, angle: angles[i]!,
    }));
}

function outlineOf(loop: CofferLoop, unit: Unit): Point[] {
    return loop.map(edge => tickPoint(edge.from, unit));
}
