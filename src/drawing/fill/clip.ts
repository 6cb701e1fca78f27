import { kept } from '../../plain/kept.ts';
import type { Point } from '../display-list.ts';

type Segment = readonly [Point, Point];

/** The stretch of a segment inside a convex polygon (given either way round), or null where it misses. */
export function clipToConvex([from, to]: Segment, shape: readonly Point[]): Segment | null {
    let enter = 0;
    let leave = 1;
    const turn = turnOf(shape);
    for (let i = 0; i < shape.length; i++) {
        const a = shape[i]!;
        const b = shape[i + 1 === shape.length ? 0 : i + 1]!;
        const across = turn * (b[0] - a[0]), down = turn * (b[1] - a[1]);
        const atFrom = across * (from[1] - a[1]) - down * (from[0] - a[0]);
        const atTo = across * (to[1] - a[1]) - down * (to[0] - a[0]);
        if (atFrom < 0 && atTo < 0) return null;
        if (atFrom < 0) enter = Math.max(enter, atFrom / (atFrom - atTo));
        else if (atTo < 0) leave = Math.min(leave, atFrom / (atFrom - atTo));
    }
    const along = (t: number): Point => [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
    return enter < leave ? [along(enter), along(leave)] : null;
}

/** Which way round a shape is given; asked for every stroke of its filling, so it is kept. */
const turnOf = kept((shape: readonly Point[]): 1 | -1 => (signedArea(shape) > 0 ? 1 : -1));

function signedArea(shape: readonly Point[]): number {
    return shape.reduce((sum, [x, y], i) => {
        const [nextX, nextY] = shape[(i + 1) % shape.length]!;
        return sum + x * nextY - y * nextX;
    }, 0);
}

/**
 * What of a shape of any form lies in a convex one (given either way round), by Sutherland and Hodgman: where it falls apart, its parts
 * hang together by an edge.
 */
export function keptInside(shape: readonly Point[], within: readonly Point[]): readonly Point[] {
    const turn = turnOf(within);
    return within.reduce((rest: readonly Point[], a, i) => {
        const b = within[i + 1 === within.length ? 0 : i + 1]!, across = turn * (b[0] - a[0]), down = turn * (b[1] - a[1]);
        return keptBeyond(rest, ([x, y]) => across * (y - a[1]) - down * (x - a[0]));
    }, shape);
}

/**
 * What of a row of places, in the plane or in space, lies where `beyond`, which grows evenly across it, is not below 0. The last is followed by the first,
 * unless it is `open`.
 */
export function keptBeyond<Place extends readonly number[]>(places: readonly Place[], beyond: (at: Place) => number, { open = false } = {}): readonly Place[] {
    return places.flatMap((at, i) => {
        const isLast = i + 1 === places.length, next = !isLast ? places[i + 1]! : open ? at : places[0]!, here = beyond(at), there = beyond(next);
        const crossing = here < 0 === there < 0 ? [] : [between(at, next, here / (here - there))];
        return here < 0 ? crossing : [at, ...crossing];
    });
}

function between<Place extends readonly number[]>(a: Place, b: Place, share: number): Place {
    return a.map((v, i) => v + share * (b[i]! - v)) as unknown as Place;
}
