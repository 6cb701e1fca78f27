import { sideOf, type Polygon } from './polygon.ts';
import type { Point } from './point.ts';

/**
 * A polygon that is walked clockwise, in parts that are convex, whose areas add up to its own: itself where it is convex, else triangles, each cut off
 * at a corner in which no other corner lies (Meisters, Polygons have ears, 1975). Quadratic in its corners, of which a coffer has few.
 */
export function convexParts(polygon: Polygon): Polygon[] {
    const left = polygon.filter((point, i) => sideOf(polygon.at(i - 1)!, point, polygon[(i + 1) % polygon.length]!) !== 0);
    if (left.every((_, i) => turnAt(left, i) > 0)) return left.length >= 3 ? [left] : [];
    const parts: Polygon[] = [];
    while (left.length > 3) {
        const ear = left.findIndex((_, i) => isEar(left, i));
        if (ear < 0) break;
        parts.push(triangleAt(left, ear));
        left.splice(ear, 1);
    }
    return [...parts, ...left.length >= 3 ? [left] : []];
}

function triangleAt(polygon: Polygon, i: number): [Point, Point, Point] {
    return [polygon.at(i - 1)!, polygon[i]!, polygon[(i + 1) % polygon.length]!];
}

function turnAt(polygon: Polygon, i: number): number {
    return sideOf(...triangleAt(polygon, i));
}

function isEar(polygon: Polygon, i: number): boolean {
    const triangle = triangleAt(polygon, i), [a, b, c] = triangle;
    if (sideOf(a, b, c) <= 0) return false;
    return polygon.every(point => triangle.includes(point) || sideOf(a, b, point) < 0 || sideOf(b, c, point) < 0 || sideOf(c, a, point) < 0);
}
