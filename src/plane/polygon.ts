import { angleOnTheRight } from './angle.ts';
import { signOfDifference } from './exact.ts';
import { minus, samePoint, type Point } from './point.ts';

/** A polygon by its corners in order, the last joined to the first. Clockwise on the plan (y to the south): its inside lies on the right. */
export type Polygon = readonly Point[];

/** Twice the area, exact, in square units: positive where it is walked clockwise. */
export function twiceArea(polygon: Polygon): bigint {
    let sum = 0n;
    polygon.forEach((point, i) => {
        const next = polygon[(i + 1) % polygon.length]!;
        const left = point.x * next.y, right = next.x * point.y;
        sum += Number.isSafeInteger(left) && Number.isSafeInteger(right) ? BigInt(left) - BigInt(right)
            : BigInt(point.x) * BigInt(next.y) - BigInt(next.x) * BigInt(point.y);
    });
    return sum;
}

/** 1 where c lies to the right of the way from a to b, -1 to the left, 0 on it. Exact. */
export function sideOf(a: Point, b: Point, c: Point): number {
    const ab = minus(b, a), ac = minus(c, a);
    return signOfDifference(ab.x, ac.y, ab.y, ac.x);
}

export function placeIn(polygon: Polygon, point: Point): 'inside' | 'edge' | 'outside' {
    let inside = false;
    for (let i = 0; i < polygon.length; i++) {
        const a = polygon[i]!, b = polygon[(i + 1) % polygon.length]!;
        const side = sideOf(a, b, point);
        if (side === 0 && between(a, point, b)) return 'edge';
        // one end at the point's height or above it, the other below: so a corner at its height counts once
        if ((a.y <= point.y) !== (b.y <= point.y) && (side > 0) === (a.y > b.y)) inside = !inside;
    }
    return inside ? 'inside' : 'outside';
}

function between(a: Point, point: Point, b: Point): boolean {
    return Math.min(a.x, b.x) <= point.x && point.x <= Math.max(a.x, b.x) && Math.min(a.y, b.y) <= point.y && point.y <= Math.max(a.y, b.y);
}

/** Whether two stretches have a point in common, ends included. Exact. */
export function touch(a: Point, b: Point, c: Point, d: Point): boolean {
    const sides = [sideOf(a, b, c), sideOf(a, b, d), sideOf(c, d, a), sideOf(c, d, b)] as const;
    if (sides[0] * sides[1] < 0 && sides[2] * sides[3] < 0) return true;
    return sides[0] === 0 && between(a, c, b) || sides[1] === 0 && between(a, d, b) || sides[2] === 0 && between(c, a, d) || sides[3] === 0 && between(c, b, d);
}

/** Whether no two of its edges touch but neighbors, and these only in their corner. */
export function isSimple(polygon: Polygon): boolean {
    const n = polygon.length;
    if (n < 3) return false;
    for (let i = 0; i < n; i++) {
        const a = polygon[i]!, b = polygon[(i + 1) % n]!, after = polygon[(i + 2) % n]!;
        if (samePoint(a, b)) return false;
        if (sideOf(a, b, after) === 0 && !between(a, b, after)) return false;     // doubles back
        for (let j = i + 2; j < n; j++) {
            if (i === 0 && j === n - 1) continue;
            if (touch(a, b, polygon[j]!, polygon[(j + 1) % n]!)) return false;
        }
    }
    return true;
}

/** The angle inside at each corner, in degrees, of a polygon that is walked clockwise. */
export function cornerAngles(polygon: Polygon): number[] {
    const n = polygon.length;
    return polygon.map((at, i) => angleOnTheRight(polygon[(i + n - 1) % n]!, at, polygon[(i + 1) % n]!));
}

export interface Extent { readonly west: number; readonly east: number; readonly north: number; readonly south: number }
export function extentOf(points: readonly Point[]): Extent {
    let west = Infinity, east = -Infinity, north = Infinity, south = -Infinity;
    for (const { x, y } of points) {
        if (x < west) west = x;
        if (x > east) east = x;
        if (y < north) north = y;
        if (y > south) south = y;
    }
    return { west, east, north, south };
}
/** The middle of a box, which may lie between two units. */
export function middleOf({ west, east, north, south }: Extent): Point {
    return { x: (west + east) / 2, y: (north + south) / 2 };
}
