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
        const inside = ([x, y]: Point): number => across * (y - a[1]) - down * (x - a[0]);
        return rest.flatMap((point, n) => {
            const next = rest[n + 1 === rest.length ? 0 : n + 1]!, here = inside(point), there = inside(next), share = here / (here - there);
            const crossing: Point[] = (here < 0) === (there < 0) ? [] : [[point[0] + share * (next[0] - point[0]), point[1] + share * (next[1] - point[1])]];
            return here < 0 ? crossing : [point, ...crossing];
        });
    }, shape);
}
