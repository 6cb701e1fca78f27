import type { Ceiling } from '../ceiling/model.ts';
import { blockOf, separation, type Block } from '../dryfit/block.ts';
import { roomBodies, type Body } from '../dryfit/body.ts';
import { NEAR, push } from '../dryfit/meetings.ts';
import { standingOf } from '../dryfit/solids.ts';
import { hull } from '../plane/hull.ts';
import type { Point } from '../plane/point.ts';
import { middleOf } from '../plane/polygon.ts';
import type { Piece, TakeOff } from '../takeoff/model.ts';

/** A piece of the dry fit where it stands in the end. */
export interface Stood {
    readonly piece: Piece;
    readonly blocks: readonly Block[];
    /** The box round them on the plan. */
    readonly box: Box;
    readonly top: number; readonly foot: number;
    /** Ticks that it may be in others by plan. */
    readonly push: number;
    /** The way it runs, one tick long. */
    readonly way: Point;
    readonly middle: Point;
}
export interface Box { readonly west: number; readonly east: number; readonly north: number; readonly south: number }

/** Every piece of the list that has a place, in the order of the list. */
export function stoodOf(ceiling: Ceiling, takeOff: TakeOff): Stood[] {
    return standingOf(takeOff, ceiling).bodies.flatMap((body: Body): Stood[] => {
        const { is, place, blocks } = body;
        if (blocks.length === 0 || !place || typeof is === 'string') return [];
        const { x, y } = place.seat.way, long = Math.hypot(x, y), box = boxOf(blocks);
        return [{
            piece: is, blocks, box, top: Math.min(...blocks.map(({ top }) => top)), foot: Math.max(...blocks.map(({ foot }) => foot)),
            push: push(body), way: { x: x / long, y: y / long }, middle: middleOf(box),
        }];
    });
}

/** The walls of the room: a piece that is pushed to its place must not come from behind them. */
export function wallsOf(ceiling: Ceiling): readonly Block[] {
    return roomBodies(ceiling).slice(1).flatMap(({ blocks }) => blocks);
}

function boxOf(blocks: readonly Block[]): Box {
    return {
        west: Math.min(...blocks.map(({ west }) => west)), east: Math.max(...blocks.map(({ east }) => east)),
        north: Math.min(...blocks.map(({ north }) => north)), south: Math.max(...blocks.map(({ south }) => south)),
    };
}

/** A way straight up to the place. */
export const RIGHT_UNDER: Point = { x: 0, y: 0 };
/** Deeper than any ceiling hangs: from there pieces are lifted. */
export const FAR_BELOW = 2 ** 30;

/** All that a piece passes through where it is lifted straight up, `aside` from its place. */
export function lifted({ blocks }: Pick<Stood, 'blocks'>, { x, y }: Point): Block[] {
    // straight up it keeps its outline
    if (x === 0 && y === 0) return blocks.map(block => ({ ...block, foot: FAR_BELOW, prism: { ...block.prism, foot: FAR_BELOW } }));
    return blocks.map(({ prism: { outline, top } }) =>
        blockOf({ outline: outline.map(([px, py]) => [Math.round(px + x), Math.round(py + y)]), top, foot: FAR_BELOW }));
}

/** And all that it passes through where it is pushed from there to its place. */
export function pushed({ blocks }: Pick<Stood, 'blocks'>, { x, y }: Point): Block[] {
    return blocks.map(({ prism: { outline, top, foot } }) =>
        blockOf({ outline: hull([...outline, ...outline.map(([px, py]) => [Math.round(px + x), Math.round(py + y)] as const)]), top, foot }));
}

/** Whether two are in each other by more than is planned. `allowed`: ticks. */
export function clash(some: readonly Block[], others: readonly Block[], allowed: number): boolean {
    return some.some(one => others.some(other => separation(one, other) < -(allowed + NEAR)));
}
