import type { Point } from '../../plane/point.ts';
import { extentOf, middleOf } from '../../plane/polygon.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { Piece } from '../../takeoff/model.ts';
import type { Move, Pose } from '../model.ts';

/** A piece seen from its side: how long and how thick it is. */
export interface Bar { readonly length: Ticks; readonly thickness: Ticks }
/** A place in it, or where that has come to: so far along from its first end, and down from its upper face, as it lies in its place. */
export type Spot = readonly [along: number, down: number];

/** A piece where it lies: its first end is to the west or north. `way`: one tick long. `start`: how far along its way it begins. `middle`: on the plan. */
export interface Frame extends Bar { readonly way: Point; readonly start: number; readonly top: Ticks; readonly middle: Point }

/** `outline`: all its corners on the plan. */
export function frameOf({ corners: [first, second] }: Pick<Piece, 'corners'>, outline: readonly Point[], top: Ticks, foot: Ticks): Frame {
    const long = Math.hypot(second.x - first.x, second.y - first.y) || 1, way = { x: (second.x - first.x) / long, y: (second.y - first.y) / long };
    const along = outline.map(({ x, y }) => x * way.x + y * way.y), start = Math.min(...along);
    return { way, start, length: Math.max(...along) - start, top, thickness: foot - top, middle: middleOf(extentOf(outline)) };
}

/**
 * Where a place in a piece is while it has this pose, seen from its side; one that is turned on the plan alone stays as it is. The piece leans and bends
 * about the level across it, so what is across stays. See `Pose` for what the shapes are; a bow is that of a beam with one load in its middle, an arc that
 * of a circle.
 */
export function spotIn([along, down]: Spot, { shape, angle, low }: Pick<Pose, 'shape' | 'angle' | 'low'>, bar: Bar): Spot {
    if (shape === 'straight' || shape === 'turned' || angle === 0) return [along, down];
    if (shape === 'leaning' || shape === 'tipped') {
        const turned = shape === 'leaning' ? leaning : tipped;
        return low === 1 ? turned([along, down], angle, bar) : mirrored(turned([bar.length - along, down], angle, bar), bar);
    }
    // both halves alike
    if (along > bar.length / 2) return mirrored(spotIn([bar.length - along, down], { shape, angle, low }, bar), bar);
    if (shape === 'kneed') return leaning([along, down], angle, { ...bar, length: bar.length / 2 });
    return (shape === 'bowed' ? bowed : arched)([along, down], angle, bar);
}

function mirrored([along, down]: Spot, { length }: Bar): Spot {
    return [length - along, down];
}

/**
 * The second end hangs lower. The middle of the first stays as high as it belongs, and it is held off its place by as much as the piece is shorter
 * to the eye, or by what the edge of its lower face stands out, so that it never is in what it comes to.
 */
function leaning([along, down]: Spot, angle: number, { length, thickness }: Bar): Spot {
    return heldOff([along, down], angle, thickness, Math.max(length * (1 - Math.cos(angle)), thickness * Math.sin(angle)));
}

/** The second end hangs lower, and the first is held off its place only so far that the edge of its lower face does not stand out. */
function tipped(spot: Spot, angle: number, { thickness }: Bar): Spot {
    return heldOff(spot, angle, thickness, thickness * Math.sin(angle));
}

function heldOff([along, down]: Spot, angle: number, thickness: Ticks, held: number): Spot {
    const sin = Math.sin(angle), cos = Math.cos(angle);
    return [held + along * cos - down * sin, along * sin + down * cos + thickness / 2 * (1 - cos)];
}

/** `angle`: of its ends. From there it turns as the moment of one load in the middle turns it; small angles. */
function bowed([along, down]: Spot, angle: number, { length, thickness }: Bar): Spot {
    const s = along, turned = angle * (1 - 4 * s ** 2 / length ** 2);
    const gained = angle ** 2 / 2 * (s - 8 * s ** 3 / (3 * length ** 2) + 16 * s ** 5 / (5 * length ** 4));
    return across([2 / 15 * length * angle ** 2 + s - gained, angle * (s - 4 * s ** 3 / (3 * length ** 2))], turned, down - thickness / 2, thickness);
}

function arched([along, down]: Spot, angle: number, { length, thickness }: Bar): Spot {
    const radius = length / (2 * angle), turned = angle * (1 - 2 * along / length);
    return across([length / 2 - radius * Math.sin(turned), radius * (Math.cos(turned) - Math.cos(angle))], turned, down - thickness / 2, thickness);
}

/** Off the middle of its thickness, square to how it runs there. */
function across([along, down]: Spot, turned: number, off: number, thickness: number): Spot {
    return [along - off * Math.sin(turned), thickness / 2 + down + off * Math.cos(turned)];
}

/** A place of a piece while it has this pose, x to the east, y to the south, z down from the ceiling. */
export function placeIn({ x, y, z }: Place, pose: Pose, frame: Frame): Place {
    const { way, start, top, middle } = frame, from = x * way.x + y * way.y - start;
    if (pose.shape === 'turned') {
        const sin = Math.sin(pose.angle), cos = Math.cos(pose.angle), [east, south] = [x - middle.x, y - middle.y];
        return { x: middle.x + east * cos - south * sin + pose.aside.x, y: middle.y + east * sin + south * cos + pose.aside.y, z: z + pose.below };
    }
    const [along, down] = spotIn([from, z - top], pose, frame), by = along - from;
    return { x: x + way.x * by + pose.aside.x, y: y + way.y * by + pose.aside.y, z: top + down + pose.below };
}
interface Place { readonly x: number; readonly y: number; readonly z: number }

/** The pose on the way from one to the other; `share` from 0 to 1. */
export function poseAt({ from, to }: Pick<Move, 'from' | 'to'>, share: number): Pose {
    const between = (a: number, b: number): number => a + (b - a) * share;
    const bent = from.shape === 'straight' ? to : from;
    return {
        aside: { x: between(from.aside.x, to.aside.x), y: between(from.aside.y, to.aside.y) }, below: between(from.below, to.below),
        shape: bent.shape, low: bent.low, angle: between(from.angle, to.angle),
    };
}
