/** A place or a direction: x east, y south, z down. */
export type Vector = readonly [x: number, y: number, z: number];

export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const times = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const unit = (a: Vector): Vector => times(a, 1 / (Math.hypot(...a) || 1));

/** An eye in the room: where it is, which way is to its right and up, and how wide it sees. */
export interface Eye {
    readonly at: Vector;
    readonly right: Vector; readonly up: Vector; readonly ahead: Vector;
}

/** Corners of a box. */
interface Bounds { readonly least: Vector; readonly most: Vector }

const STEPS = 60;
/** How wide the eye sees from the picture's foot to its top, in degrees. */
export const LENS = 32;
/** Half the height of the picture, at a distance of one. */
const HALF = Math.tan(LENS / 2 * Math.PI / 180);

/**
 * An eye that looks against `back` and sees all of the box, in the middle of the picture. In perspective the middle is found
 * step by step, each step a third of the way, so that none goes too far.
 * @param aspect width of the picture over its height
 */
export function eyeFor({ least, most }: Bounds, back: Vector, aspect: number): Eye {
    const ahead = times(unit(back), -1);
    const right = unit(cross(ahead, [0, 0, -1]));
    const up = cross(right, ahead);
    const corners = [least[0], most[0]].flatMap(x => [least[1], most[1]].flatMap(y => [least[2], most[2]].map((z): Vector => [x, y, z])));
    let target = times(plus(least, most), 0.5);
    let distance = 1;
    for (let step = 0; step <= STEPS; step++) {
        const seen = corners.map(corner => minus(corner, target)).map(from => ({ before: -dot(from, ahead), x: dot(from, right), y: dot(from, up) }));
        distance = Math.max(...seen.map(({ before, x, y }) => before + Math.max(Math.abs(x) / (HALF * aspect), Math.abs(y) / HALF)));
        if (step === STEPS) break;
        const middle = (along: 'x' | 'y') => {
            const shares = seen.map(corner => corner[along] / (distance - corner.before));
            return (Math.min(...shares) + Math.max(...shares)) / 6 * distance;
        };
        target = plus(target, plus(times(right, middle('x')), times(up, middle('y'))));
    }
    return { at: plus(target, times(ahead, -distance)), right, up, ahead };
}

/** Where a spot is seen: from the middle of the picture to the right and up, in halves of its height. Nothing lies behind the eye. */
export function seenAt(eye: Eye, spot: Vector): readonly [x: number, y: number] {
    const from = minus(spot, eye.at);
    const depth = Math.max(1e-9, dot(from, eye.ahead)) * HALF;
    return [dot(from, eye.right) / depth, dot(from, eye.up) / depth];
}
