import { differenceOver, signOfDifference } from './exact.ts';
import { lengthOf, primitive, type Point, type Vector } from './point.ts';

/**
 * An infinite line with a direction: the points with a x + b y = c. (a, b) points to the right of somebody who walks along it,
 * in the smallest whole numbers, and c is whole. So the line itself is exact, and every crossing is an exact fraction that is
 * rounded once, to the unit.
 */
export interface Line { readonly a: number; readonly b: number; readonly c: number }

/** The line through a point in a direction of whole numbers that are not both 0. */
export function lineThrough({ x, y }: Point, direction: Vector): Line {
    const { x: dx, y: dy } = primitive(direction);
    const a = 0 - dy, b = dx;
    return { a, b, c: a * x + b * y };
}

/** The line from one point to another: undefined where they are the same. */
export function lineBetween(from: Point, to: Point): Line | undefined {
    const direction = { x: to.x - from.x, y: to.y - from.y };
    return direction.x === 0 && direction.y === 0 ? undefined : lineThrough(from, direction);
}

export function directionOf({ a, b }: Line): Vector {
    return { x: b, y: 0 - a };
}

/** The same line walked the other way. */
export function turnedRound({ a, b, c }: Line): Line {
    return { a: 0 - a, b: 0 - b, c: 0 - c };
}

/** The same line turned a quarter to the right, through this point: square to it, in whole numbers as small as its own. */
export function squareThrough({ a, b }: Line, { x, y }: Point): Line {
    return { a: 0 - b, b: a, c: a * y - b * x };
}

/**
 * The parallel line that lies so far to the right, in units; to the left where negative. Exact along the axes. At 45 degrees
 * it lies on even numbers, so that lines at 45 degrees cross each other and those along the axes in whole points as long as
 * they themselves run through even ones; at other angles it is off by less than half a unit divided by the length of (a, b).
 */
export function offset(line: Line, distance: number): Line {
    const { a, b, c } = line;
    if (a === 0 || b === 0) return { a, b, c: c + distance };
    if (Math.abs(a) === 1 && Math.abs(b) === 1) return { a, b, c: c + 2 * Math.round(distance * Math.SQRT1_2) };
    return { a, b, c: c + Math.round(distance * lengthOf({ x: a, y: b })) };
}

/** Where they cross, to the nearest unit; undefined where they are parallel. The same in whatever order they are given. */
export function crossing(l: Line, m: Line): Point | undefined {
    const under = l.a * m.b - m.a * l.b;
    if (under === 0) return undefined;
    return { x: differenceOver(l.c, m.b, m.c, l.b, under), y: differenceOver(l.a, m.c, m.a, l.c, under) };
}

/** Which way `other` runs as seen from `line`: 1 to its right, -1 to its left, 0 along it or against it. */
export function turn(line: Line, other: Line): number {
    return signOfDifference(line.a, other.b, line.b, other.a);
}

/** How far the point lies to the right of the line, in units. */
export function distanceFrom({ a, b, c }: Line, { x, y }: Point): number {
    const over = a * x + b * y - c;
    return a === 0 || b === 0 ? over : over / lengthOf({ x: a, y: b });
}
