import type { Point } from '../plane/point.ts';
import { gcd } from '../quantity/gcd.ts';
import type { Exact, Plan, Spot } from './plan.ts';

/**
 * The unit that the plane is reckoned in: so many to a tick that every fraction of the plan is whole, times 64, so that halves of
 * odd widths are whole, 45 degrees lie on even numbers, and what is rounded at other angles is far below a tick.
 */
export interface Unit { readonly perTick: number }
const FINER = 64;
/** Denominators that no common one below this has are rounded to it: less than a millionth of a tick. Keeps a room of 100 m within whole numbers. */
const MOST = 2 ** 20;

export function unitFor(plan: Plan): Unit {
    let common = 1;
    for (const exact of exactsOf(plan)) {
        if (typeof exact === 'number') continue;
        const under = Number(exact.d);
        const wider = common / gcd(common, under) * under;
        if (wider <= MOST) common = wider;
    }
    return { perTick: common * FINER };
}

function* exactsOf({ walls, lines }: Plan): Generator<Exact> {
    for (const { x, y } of [...walls.map(wall => wall.from), ...lines.map(line => line.spot)]) { yield x; yield y; }
}

function unitsOf(exact: Exact, { perTick }: Unit): number {
    if (typeof exact === 'number') return Math.round(exact * perTick);
    const { s, n, d } = exact.mul(perTick);
    return Number(s * ((2n * n + d) / (2n * d)));
}

export function pointOf({ x, y }: Spot, unit: Unit): Point {
    return { x: unitsOf(x, unit), y: unitsOf(y, unit) };
}

/** In ticks, as near as a plain number comes: whole where it is whole, else the fraction of a tick that a division left. */
export function ticksOf(units: number, { perTick }: Unit): number {
    return units / perTick;
}

/** A corner of a piece, rounded once to a whole tick. */
export function tickPoint({ x, y }: Point, { perTick }: Unit): Point {
    return { x: Math.round(x / perTick) + 0, y: Math.round(y / perTick) + 0 };
}
