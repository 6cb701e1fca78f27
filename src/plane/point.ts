import { gcd } from '../quantity/gcd.ts';

/**
 * Points and vectors of the plane: x to the east, y to the south, in whole numbers of one unit that the caller picks fine
 * enough. Whole, so that on which side of a line a point lies is exact, whatever the angle.
 */
export interface Point { readonly x: number; readonly y: number }
export type Vector = Point;

export function plus(a: Point, b: Vector): Point {
    return { x: a.x + b.x, y: a.y + b.y };
}
export function minus(a: Point, b: Point): Vector {
    return { x: a.x - b.x, y: a.y - b.y };
}
export function reversed({ x, y }: Vector): Vector {
    return { x: 0 - x, y: 0 - y };
}
export function samePoint(a: Point, b: Point): boolean {
    return a.x === b.x && a.y === b.y;
}

/**
 * In the vector's unit. By a square root, which every engine has to round alike (IEEE 754), as it has not what it offers as hypotenuse, which takes
 * many times as long, too. Nothing here comes near the numbers whose squares are too large.
 */
export function lengthOf({ x, y }: Vector): number {
    return Math.sqrt(x * x + y * y);
}

/** In the points' unit; exact where both lie in a row or a column. */
export function distance(a: Point, b: Point): number {
    return a.x === b.x ? Math.abs(a.y - b.y) : a.y === b.y ? Math.abs(a.x - b.x) : lengthOf(minus(a, b));
}

/** How far `to` lies from `from` in this direction; negative against it. Exact along the axes. */
export function reach(from: Point, to: Point, direction: Vector): number {
    if (direction.y === 0) return Math.sign(direction.x) * (to.x - from.x);
    if (direction.x === 0) return Math.sign(direction.y) * (to.y - from.y);
    return ((to.x - from.x) * direction.x + (to.y - from.y) * direction.y) / lengthOf(direction);
}

/** The same direction in the smallest whole numbers: (14, -7) is (2, -1). */
export function primitive({ x, y }: Vector): Vector {
    const common = gcd(Math.abs(x), Math.abs(y));
    return common > 1 ? { x: x / common, y: y / common } : { x, y };
}
