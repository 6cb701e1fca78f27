import { lengthOf } from '../plane/point.ts';
import { gcd } from '../quantity/gcd.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Point, Prism } from './model.ts';

/**
 * A prism with what is measured of it again and again.
 *
 * Numbers: corners are whole ticks. Every edge runs along a wall, or across the thickness of one board at a miter, so its
 * direction in lowest terms is at most a board's thickness (2^18 ticks are 16"), and its product with any place in the
 * longest room that is laid out (1000', 2^28 ticks) stays under 2^53: on which side of a face a corner lies is exact in
 * plain numbers. Only distances along a slanted face are rounded, when they are divided by its length.
 */
export interface Block {
    readonly prism: Prism;
    readonly edges: readonly Edge[];
    readonly west: Ticks; readonly east: Ticks; readonly north: Ticks; readonly south: Ticks; readonly top: Ticks; readonly foot: Ticks;
    /** Whether its outline is that box. */
    readonly isBox: boolean;
}
/** An edge of the outline: from a corner along (dx, dy), in lowest terms; it looks out to (dy, -dx). */
interface Edge { readonly x: Ticks; readonly y: Ticks; readonly dx: number; readonly dy: number; readonly unit: number; readonly length: number }

export function blockOf(prism: Prism): Block {
    const { outline, top, foot } = prism;
    const edges = outline.map(([x, y], i): Edge => {
        const [nextX, nextY] = outline[(i + 1) % outline.length]!;
        const common = gcd(Math.abs(nextX - x), Math.abs(nextY - y)) || 1;
        const dx = (nextX - x) / common, dy = (nextY - y) / common, unit = lengthOf({ x: dx, y: dy });
        return { x, y, dx, dy, unit, length: unit * common };
    });
    const xs = outline.map(([x]) => x), ys = outline.map(([, y]) => y);
    return {
        prism, edges, top, foot, west: Math.min(...xs), east: Math.max(...xs), north: Math.min(...ys), south: Math.max(...ys),
        isBox: edges.length === 4 && edges.every(({ dx, dy }) => dx === 0 || dy === 0),
    };
}

/**
 * How far two blocks are apart along the best of their axes, in ticks; negative: how deep they are in each other, which is
 * how far one would have to be moved to be out of the other. For upright prisms those of the faces are all the axes there are. Of two whose
 * boxes are apart, how far these are.
 */
export function separation(a: Block, b: Block): number {
    let best = Math.max(b.top - a.foot, a.top - b.foot, b.west - a.east, a.west - b.east, b.north - a.south, a.north - b.south);
    if (best >= 0) return best;
    if (!a.isBox) best = Math.max(best, beyondFaces(a, b));
    if (!b.isBox) best = Math.max(best, beyondFaces(b, a));
    return best;
}

/** How far `b` is beyond the slanted face of `a` that it is farthest beyond. */
function beyondFaces(a: Block, b: Block): number {
    let best = -Infinity;
    for (const { x, y, dx, dy, unit } of a.edges) {
        if (dx === 0 || dy === 0) continue;
        let nearest = Infinity;
        for (const [px, py] of b.prism.outline) {
            nearest = Math.min(nearest, dy * (px - x) - dx * (py - y));
            if (nearest <= best * unit) break;
        }
        best = Math.max(best, nearest / unit);
    }
    return best;
}

/** Two faces that look at each other: over what area, and how far apart they are at the two ends of it. In each other: negative. */
export interface Facing { readonly area: number; readonly near: number; readonly far: number; /** Around the area. */ readonly girth: number }

/** Numbers of the faces of a block: the edges of the outline, then the upper and the lower face. */
export function facesOf(block: Block): number {
    return block.edges.length + 2;
}

/** Undefined where face `i` of `a` and face `j` of `b` do not look at each other; of lower and upper faces also where they are farther apart than `reach`. */
export function facing(a: Block, i: number, b: Block, j: number, reach = Infinity): Facing | undefined {
    const edge = a.edges[i], other = b.edges[j];
    if (edge && other) return uprightFacing(a, edge, b, other);
    if (edge || other || i - a.edges.length === j - b.edges.length) return undefined;
    const apart = i === a.edges.length ? a.top - b.foot : b.top - a.foot;
    if (Math.abs(apart) > reach) return undefined;
    const { area, girth } = sharedPlan(a, b);
    return area > 0 ? { area, girth, near: apart, far: apart } : undefined;
}

/** Faces turned more than this away from each other do not face each other: 3 degrees. */
const OPPOSED = -Math.cos(3 * Math.PI / 180);

function uprightFacing(a: Block, edge: Edge, b: Block, other: Edge): Facing | undefined {
    const high = Math.min(a.foot, b.foot) - Math.max(a.top, b.top);
    if (high <= 0) return undefined;
    const { x, y, dx, dy, unit, length } = edge;
    if (dx * other.dx + dy * other.dy > OPPOSED * unit * other.unit) return undefined;
    const step = other.length / other.unit;
    const along = (px: number, py: number): number => (dx * (px - x) + dy * (py - y)) / unit;
    const beyond = (px: number, py: number): number => (dy * (px - x) - dx * (py - y)) / unit;
    const endX = other.x + other.dx * step, endY = other.y + other.dy * step;
    const last = along(other.x, other.y), first = along(endX, endY);        // it runs the other way
    const from = Math.max(0, first), to = Math.min(length, last);
    if (to <= from) return undefined;
    const atLast = beyond(other.x, other.y), atFirst = beyond(endX, endY);
    const at = (t: number): number => atFirst + (atLast - atFirst) * (t - first) / (last - first);
    return { area: (to - from) * high, near: at(from), far: at(to), girth: 2 * (to - from + high) };
}

/** The part of the area over which two faces are `apart`, within `tolerance` ticks. */
export function areaAt({ area, near, far }: Facing, apart: number, tolerance: number): number {
    const low = Math.min(near, far), high = Math.max(near, far);
    if (high - low < 1e-9) return Math.abs(low - apart) <= tolerance ? area : 0;
    const share = (Math.min(high, apart + tolerance) - Math.max(low, apart - tolerance)) / (high - low);
    return share > 0 ? area * Math.min(1, share) : 0;
}

/** What two outlines have in common: its area in square ticks, and the way around it. */
export function sharedPlan(a: Block, b: Block): { area: number; girth: number } {
    const wide = Math.min(a.east, b.east) - Math.max(a.west, b.west), long = Math.min(a.south, b.south) - Math.max(a.north, b.north);
    if (wide <= 0 || long <= 0) return { area: 0, girth: 0 };
    if (a.isBox && b.isBox) return { area: wide * long, girth: 2 * (wide + long) };
    let shape: readonly Point[] = a.prism.outline;
    for (const edge of b.edges) shape = cutOff(shape, edge);
    return { area: areaOf(shape), girth: 2 * (wide + long) };
}

/** Keeps what is inside of an edge. */
function cutOff(shape: readonly Point[], { x, y, dx, dy }: Edge): Point[] {
    const kept: Point[] = [];
    shape.forEach((point, i) => {
        const next = shape[(i + 1) % shape.length]!;
        const out = dy * (point[0] - x) - dx * (point[1] - y), nextOut = dy * (next[0] - x) - dx * (next[1] - y);
        if (out <= 0) kept.push(point);
        if ((out < 0 && nextOut > 0) || (out > 0 && nextOut < 0)) {
            const share = out / (out - nextOut);
            kept.push([point[0] + share * (next[0] - point[0]), point[1] + share * (next[1] - point[1])]);
        }
    });
    return kept;
}

/** Square ticks; the outline's own turn decides the sign, see model.ts. */
export function areaOf(outline: readonly Point[]): number {
    let twice = 0;
    outline.forEach(([x, y], i) => {
        const [nextX, nextY] = outline[(i + 1) % outline.length]!;
        twice += x * nextY - nextX * y;
    });
    return twice / 2;
}
