import { distance, type Point } from '../../plane/point.ts';
import type { Ticks } from '../../quantity/ticks.ts';

/** Places that the ladder goes to one after the other, in any order in which each comes after those that it waits for. */
export interface Stretch {
    readonly at: readonly Point[];
    /** Of each the numbers of those that come before it. */
    readonly waits: readonly ReadonlySet<number>[];
    /** Whole ticks from one to another. */
    far(from: number, to: number): Ticks;
}

export function stretchOf(at: readonly Point[], waits: readonly ReadonlySet<number>[]): Stretch {
    const table = at.map(from => at.map(to => hop(from, to)));
    return { at, waits, far: (from, to) => table[from]![to]! };
}

/** How far the ladder is moved, in whole ticks, so that sums of it are exact. */
export function hop(from: Point, to: Point): Ticks {
    return Math.round(distance(from, to));
}
