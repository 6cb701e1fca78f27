import type { DeepStretch } from '../plane/stretches.ts';
import { endsNamed } from '../ceiling/shape.ts';
import type { BowedWall } from './bowed.ts';

/** `west or east`: the ends that a wall is measured from. */
export function alongWords({ wall }: Pick<BowedWall, 'wall'>): string {
    return endsNamed(wall).join(' or ');
}

/** `1/4" at 6', from 2' 3" to 9'`; `over its whole length` where that is so. */
export function stretchWords({ from, to, deepest }: DeepStretch, length: number, mark: (ticks: number) => string): string {
    const over = from <= 0 && to >= length ? 'over its whole length' : `from ${mark(from)} to ${mark(to)}`;
    return `${mark(deepest.ticks)} at ${mark(deepest.along)}, ${over}`;
}
