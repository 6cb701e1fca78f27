import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from './model.ts';

/** What a piece is cut to between its outermost points: what a board has to have, and where the stop is set. */
export function longPoints({ cutOverall }: Pick<Piece, 'cutOverall'>): Ticks {
    return cutOverall;
}
