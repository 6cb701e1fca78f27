import type { Move, Pose } from '../../putup/model.ts';
import { placeIn, poseAt } from '../../putup/motion/pose.ts';
import { t } from '../shared/words.ts';
import type { Arrival, OrderInView } from './order.ts';

/** What is seen at one moment: so many pieces are up, in their order, and one of them may be on its way. */
export interface Moment { readonly up: number; readonly moving: { readonly arrival: Arrival; readonly pose: Pose } | null }

/** Pieces in the order in which they are put up. */
export function arrivalsIn({ steps }: OrderInView): Arrival[] {
    return steps.flatMap(({ pieces }) => pieces);
}

/**
 * `at`: 0 before anything is up, 1 when the first step is done; between them its pieces come one after the other, each on its own way, as they were tried.
 * One without a way is just there.
 */
export function momentAt({ steps, ways }: OrderInView, at: number): Moment {
    const done = Math.min(steps.length, Math.max(0, Math.floor(at))), before = steps.slice(0, done).reduce((sum, { pieces }) => sum + pieces.length, 0);
    const pieces = steps[done]?.pieces ?? [], along = (at - done) * pieces.length;
    if (along <= 0 || pieces.length === 0) return { up: before, moving: null };
    const arrival = pieces[Math.min(pieces.length - 1, Math.floor(along))]!, up = before + Math.floor(along), moves = ways[arrival.way];
    return { up, moving: moves ? { arrival, pose: poseOn(moves, along - Math.floor(along)) } : null };
}

/** Where a piece is on its way: the lift takes most of the time, however short what comes after it. */
export function poseOn(moves: readonly Move[], share: number): Pose {
    const last = moves.length - 1, parts = moves.map(({ kind }) => (kind === 'lift' ? 2 : 1)), all = parts.reduce((sum, part) => sum + part, 0);
    let left = share * all;
    for (const [i, move] of moves.entries()) {
        const part = parts[i]!;
        if (left <= part || i === last) return poseAt(move, eased(Math.min(1, left / part)));
        left -= part;
    }
    return moves[last]!.to;
}

/** Slow at both ends. */
function eased(share: number): number {
    return share * share * (3 - 2 * share);
}

/** How long it takes to watch a step, in seconds: long enough to see each of a few pieces, and not too long where there are many. */
export function secondsOf(pieces: number): number {
    return Math.min(6, Math.max(1.4, 0.7 + 0.5 * pieces));
}

/** What is done when so many steps are: `Step 3 of 43 is done: blocking, line A. Pieces that are up: 6.` */
export function doneWords({ steps }: OrderInView, done: number): string {
    const step = steps[done - 1];
    return step ? t('Step {0} of {1} is done: {2}. Pieces that are up: {3}.', done, steps.length, step.what, steps.slice(0, done).reduce((sum, { pieces }) => sum + pieces.length, 0))
        : t('Nothing is up yet; there are {0} steps.', steps.length);
}

/** What is being done. */
export function doingWords({ steps }: OrderInView, number: number): string {
    const step = steps[number - 1];
    return step ? t('Step {0} of {1}: {2}', number, steps.length, step.what) : '';
}

/** The number of steps that are done, from what a slider says. */
export function stepsDone(order: OrderInView, step: number | string): number {
    const number = Math.round(Number(step));
    return Number.isFinite(number) ? Math.min(order.steps.length, Math.max(0, number)) : 0;
}

export type PoseInView = Pose;
/** Where a place of a piece is while it has a pose; ticks, x to the east, y to the south, z down. */
export const placeOn = placeIn;
