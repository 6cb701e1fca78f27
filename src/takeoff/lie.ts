import type { Cut, Piece as Strip } from '../arrangement/model.ts';
import { arrangedOf, type LaidOut } from '../ceiling/plan.ts';
import { SIDES, type Side } from '../job/model.ts';
import { reach, reversed, type Point, type Vector } from '../plane/point.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { spliceLetter, type Place } from './ids.ts';
import type { Box, Corners, EndCut, Part } from './model.ts';

/**
 * How a piece of the arrangement lies in the ceiling, as cut lists tell it: the end to the west or north first, and the long edge
 * that its length is told by (`back`: of a side its back, of what runs along a wall its wall edge, of what lies in a beam that to the west or north) before the other.
 */
export interface Lie {
    readonly strip: Strip;
    /** From the first end to the last. */
    readonly way: Vector;
    /** Along the back, then back along the face; not rounded. */
    readonly corners: Corners;
    /** From end to end along its way, as told by `placeAlong`. */
    readonly from: number; readonly to: number;
    /** Lengths of both long edges. */
    readonly back: number; readonly face: number;
    readonly ends: readonly [EndCut, EndCut];
    readonly cuts: readonly [Cut, Cut];
    /** Null at a splice. */
    readonly meets: readonly [string | null, string | null];
}

export function lieOf(strip: Strip): Lie {
    const { corners: [a, b, c, d], edges, ends } = strip;
    const turned = strip.way.x < 0 || strip.way.x === 0 && strip.way.y < 0;
    const along = (start: Point, end: Point): readonly [Point, Point] => (turned ? [end, start] : [start, end]);
    const firstIsBack = edges[0].name === 'wall' || isWestOrNorth(strip);
    const [back, face] = firstIsBack ? [along(a, b), along(d, c)] : [along(d, c), along(a, b)];
    const [first, last] = turned ? [ends[1], ends[0]] : ends;
    const way = turned ? reversed(strip.way) : strip.way, places = [a, b, c, d].map(point => placeAlong(way, point));
    return {
        strip, way, corners: [back[0], back[1], face[1], face[0]], from: Math.min(...places), to: Math.max(...places),
        back: edges[firstIsBack ? 0 : 1].length, face: edges[firstIsBack ? 1 : 0].length,
        ends: [endCut(first), endCut(last)], cuts: [first.cut, last.cut], meets: [metAt(first), metAt(last)],
    };
}

function metAt({ cut, meets }: Strip['ends'][number]): string | null {
    return cut === 'splice' ? null : meets;
}

/** How far a point lies along a direction from the corner where x and y begin. */
export function placeAlong(way: Vector, point: Point): number {
    return reach({ x: 0, y: 0 }, point, way);
}

/** Whether, of what lies in a beam, the first edge is the one to the west or north. */
function isWestOrNorth({ edges, corners: [a, , , d] }: Strip): boolean {
    return edges[0].name === 'left' && a.x + a.y < d.x + d.y;
}

function endCut({ cut, angle }: Strip['ends'][number]): EndCut {
    return cut === 'miter' || cut === 'outside-miter' ? { cut: 'miter', degrees: Math.abs(angle) } : { cut: 'square' };
}

/** Corners in whole ticks, as they are drawn. */
export function inTicks(corners: Corners): Corners {
    const rounded = ({ x, y }: Point): Point => ({ x: Math.round(x) + 0, y: Math.round(y) + 0 });
    const [a, b, c, d] = corners;
    return [rounded(a), rounded(b), rounded(c), rounded(d)];
}

/** The box around it, from `top` down to `foot`. */
export function boxAround(corners: Corners, [top, foot]: readonly [Ticks, Ticks]): Box {
    const xs = corners.map(({ x }) => x), ys = corners.map(({ y }) => y);
    return { west: Math.min(...xs), east: Math.max(...xs), north: Math.min(...ys), south: Math.max(...ys), top, foot };
}

/** A piece as it is drawn, the same one with the coffers at the sizes they are cut to, and its name. */
export interface Pair {
    readonly exact: Lie; readonly cut: Lie;
    readonly named: Place;
    /** It runs from wall to wall or to a splice, and is cut to these and to no coffer. */
    readonly through: boolean;
}

/** Every piece of the arrangement, by part and by what it belongs to: a line, a wall, a trim. */
export class Pairs {
    private readonly byPlace = new Map<string, Pair[]>();
    private readonly names = new Map<Strip, Place>();

    constructor(ceiling: LaidOut) {
        const { exact, asCut } = arrangedOf(ceiling), { lines } = ceiling;
        const through = new Set(lines.filter(line => line.through).map(line => line.name));
        const cut = exact === asCut ? undefined : new Map(asCut.pieces.map(piece => [keyOf(piece), piece]));
        const groups = new Map<string, Strip[]>();
        for (const piece of exact.pieces) {
            const key = `${piece.part} ${piece.of}`, there = groups.get(key);
            if (there) there.push(piece);
            else groups.set(key, [piece]);
        }
        for (const [key, strips] of groups) {
            const lies = strips.map(lieOf), { part, of } = strips[0]!, wall = isSide(of) ? of : undefined;
            const runs = wall ? part !== 'side' && part !== 'cleat' : (part === 'bottom' || part === 'blocking') && through.has(of);
            if (wall || runs) lies.sort((a, b) => a.from - b.from);
            this.byPlace.set(key, lies.map((lie, i) => {
                const other = cut?.get(keyOf(lie.strip)), letter = runs ? spliceLetter(i, lies.length) : undefined;
                const named = wall ? nameAtWall(part, wall, i, letter) : nameOf(lie.strip, letter);
                this.names.set(lie.strip, named);
                return { exact: lie, cut: other ? lieOf(other) : lie, through: runs, named };
            }));
        }
    }
    of(part: Strip['part'], owner: string): readonly Pair[] {
        return this.byPlace.get(`${part} ${owner}`) ?? [];
    }
    all(): readonly Pair[] {
        return [...this.byPlace.values()].flat();
    }
    nameOf(strip: Strip): Place {
        return this.names.get(strip)!;
    }
    /** The part that lists know it by. */
    partOf({ part }: Strip): Part {
        return part === 'wall-cleat' ? 'cleat' : part === 'beam' ? 'side' : part;
    }
}

function keyOf({ part, of, on, nth, coffers }: Strip): string {
    return `${part} ${of} ${on} ${nth} ${part === 'trim' ? coffers[0] : ''}`;
}

function isSide(name: string): name is Side {
    return SIDES.includes(name as Side);
}

/** `letter`: of what runs through, and where it is spliced which piece it is. */
function nameOf({ part, of, on, nth, coffers }: Strip, letter: string | null | undefined): Place {
    switch (part) {
        case 'trim': return { coffer: coffers[0]!, on: on as Side };
        case 'side': case 'cleat': return { line: of, bay: nth, on: on as Side };
        default: return letter === undefined ? { line: of, bay: nth } : { line: of, nth: letter };
    }
}

/** Bays of a half beam's sides are counted from the west or north. */
function nameAtWall(part: Strip['part'], wall: Side, index: number, letter: string | null | undefined): Place {
    switch (part) {
        case 'band': return { on: wall, nth: letter ?? null };
        case 'wall-cleat': return { wall, nth: letter ? `wall-${letter}` : 'wall' };
        case 'side': case 'cleat': return { wall, bay: index + 1 };
        default: return { wall, nth: letter ?? null };
    }
}

/** Where the pieces of a run from wall to wall meet: at a mark of the tape, counted from the start of the run, so that it is no shorter or longer for a splice. */
export function marksOf(pairs: readonly Pair[], step: Ticks): (place: number) => number {
    const start = Math.min(...pairs.map(({ exact }) => exact.from)), end = Math.max(...pairs.map(({ exact }) => exact.to));
    return place => place === end ? end : start + Math.round((place - start) / step) * step;
}
