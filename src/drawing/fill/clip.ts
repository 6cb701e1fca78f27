import type { Point } from '../display-list.ts';

export type Segment = readonly [Point, Point];

/** The stretch of a segment inside a convex polygon (given either way round), or null where it misses. */
export function clipToConvex([from, to]: Segment, shape: readonly Point[]): Segment | null {
    let enter = 0;
    let leave = 1;
    const turn = signedArea(shape) > 0 ? 1 : -1;
    for (let i = 0; i < shape.length; i++) {
        const a = shape[i]!;
        const b = shape[(i + 1) % shape.length]!;
        const inside = ([x, y]: Point) => turn * ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]));
        const atFrom = inside(from);
        const atTo = inside(to);
        if (atFrom < 0 && atTo < 0) return null;
        if (atFrom < 0) enter = Math.max(enter, atFrom / (atFrom - atTo));
        else if (atTo < 0) leave = Math.min(leave, atFrom / (atFrom - atTo));
    }
    const along = (t: number): Point => [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
    return enter < leave ? [along(enter), along(leave)] : null;
}

function signedArea(shape: readonly Point[]): number {
    return shape.reduce((sum, [x, y], i) => {
        const [nextX, nextY] = shape[(i + 1) % shape.length]!;
        return sum + x * nextY - y * nextX;
    }, 0);
}
