import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from './model.ts';

/** What a piece is cut to between its long points: what a board has to have, and where the stop is set. */
export function longPoints({ cutFace, cutBack }: Pick<Piece, 'cutFace' | 'cutBack'>): Ticks {
    return Math.max(cutFace, cutBack);
}
