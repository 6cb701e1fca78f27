import { isTurned } from '../takeoff/ends.ts';
import type { Piece } from '../takeoff/model.ts';

/** How many of its ends the saw is turned or tilted for. */
export function miterCount(piece: Piece): number {
    return piece.ends.filter(isTurned).length;
}

/** What tells the piece's two ends apart at the saw: the hand the cut list gives, `both ends`, or `either` where it fits either way round. */
export function handAtSaw(piece: Piece): 'left' | 'right' | 'both ends' | 'either' | null {
    switch (miterCount(piece)) {
        case 0: return null;
        case 1: return piece.hand ?? 'either';
        default: return 'both ends';
    }
}
