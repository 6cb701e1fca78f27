import type { Point } from '../../drawing/display-list.ts';

/**
 * A drawing covers what lies behind by what is filled after it. A DXF file has no paper to cover with, so the lines
 * themselves have to stop at the edge of what covers them. Lines along that edge stay.
 */
export interface Cover { readonly points: readonly Point[]; readonly left: number; readonly right: number; readonly top: number; readonly foot: number }
export type Segment = readonly [Point, Point];

/** In points; less than any pen is wide. */
const ON_THE_EDGE = 1e-4;

export function cover(points: readonly Point[]): Cover {
    return {
        points,
        left: Math.min(...points.map(([x]) => x)), right: Math.max(...points.map(([x]) => x)),
        top: Math.min(...points.map(([, y]) => y)), foot: Math.max(...points.map(([, y]) => y)),
    };
}

/** A circle as a polygon of this many sides covers, and is covered, as the circle would be, to a hair. */
export function circlePoints([x, y]: Point, radius: number): readonly Point[] {
    return Array.from(
        { length: CIRCLE_SIDES }, (_, i) => [x + radius * Math.cos(2 * Math.PI * i / CIRCLE_SIDES), y + radius * Math.sin(2 * Math.PI * i / CIRCLE_SIDES)],
    );
}
const CIRCLE_SIDES = 72;

/** The stretches of a segment that no cover hides, from the `from`th on, in order. The same segment where nothing hides any of it. */
export function uncovered(segment: Segment, covers: readonly Cover[], from = 0): readonly Segment[] {
    const [[x0, y0], [x1, y1]] = segment;
    const left = Math.min(x0, x1) + ON_THE_EDGE;
    const right = Math.max(x0, x1) - ON_THE_EDGE;
    const top = Math.min(y0, y1) + ON_THE_EDGE;
    const foot = Math.max(y0, y1) - ON_THE_EDGE;
    let rest: readonly Segment[] = [segment];
    for (let i = from; i < covers.length && rest.length > 0; i++) {
        const each = covers[i]!;
        if (right <= each.left || left >= each.right || foot <= each.top || top >= each.foot) continue;
        rest = rest.flatMap(stretch => outside(stretch, each));
    }
    return rest;
}

/** Cut where the segment meets an edge of the cover, then keep the stretches whose middle does not lie inside. */
function outside(segment: Segment, { points }: Cover): readonly Segment[] {
    const cuts = [0, ...points.flatMap((point, i) => meeting(segment, [point, points[(i + 1) % points.length]!])).sort((a, b) => a - b), 1];
    const at = (t: number): Point => (t === 0 ? segment[0] : t === 1 ? segment[1] : between(segment, t));
    const kept: [number, number][] = [];
    let hidden = false;
    for (let i = 1; i < cuts.length; i++) {
        const from = cuts[i - 1]!;
        const to = cuts[i]!;
        if (to <= from) continue;
        if (isInside(between(segment, (from + to) / 2), points)) { hidden = true; continue; }
        const last = kept.at(-1);
        if (last?.[1] === from) last[1] = to;
        else kept.push([from, to]);
    }
    return hidden ? kept.map(([from, to]) => [at(from), at(to)] as const) : [segment];
}

function between([[x0, y0], [x1, y1]]: Segment, t: number): Point {
    return [x0 + t * (x1 - x0), y0 + t * (y1 - y0)];
}

/** Where along `a` it meets `b`; along an edge that runs with it, where that edge begins and ends. */
function meeting([[ax, ay], [bx, by]]: Segment, [c, d]: Segment): readonly number[] {
    const [dx, dy] = [bx - ax, by - ay];
    const cross = dx * (d[1] - c[1]) - dy * (d[0] - c[0]);
    const length = dx * dx + dy * dy;
    if (Math.abs(cross) < 1e-9 * length) return [c, d].map(([x, y]) => ((x - ax) * dx + (y - ay) * dy) / length).filter(t => t > 0 && t < 1);
    const t = ((c[0] - ax) * (d[1] - c[1]) - (c[1] - ay) * (d[0] - c[0])) / cross;
    const u = ((c[0] - ax) * dy - (c[1] - ay) * dx) / cross;
    return t > 0 && t < 1 && u >= -1e-9 && u <= 1 + 1e-9 ? [t] : [];
}

/** Inside a polygon of any simple shape, and not on its edge. */
function isInside([x, y]: Point, points: readonly Point[]): boolean {
    let inside = false;
    for (let i = 0; i < points.length; i++) {
        const [ax, ay] = points[i]!;
        const [bx, by] = points[(i + 1) % points.length]!;
        if (toSegment([x, y], [[ax, ay], [bx, by]]) < ON_THE_EDGE) return false;
        if ((ay > y) !== (by > y) && x < ax + (y - ay) * (bx - ax) / (by - ay)) inside = !inside;
    }
    return inside;
}

function toSegment([x, y]: Point, [[ax, ay], [bx, by]]: Segment): number {
    const [dx, dy] = [bx - ax, by - ay];
    const length = dx * dx + dy * dy;
    const t = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length));
    return Math.hypot(ax + t * dx - x, ay + t * dy - y);
}
