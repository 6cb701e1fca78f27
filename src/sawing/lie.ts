import { isHanded } from '../takeoff/cut-alike.ts';
import { endsFromTheLeft, isTurned } from '../takeoff/ends.ts';
import type { Piece } from '../takeoff/model.ts';

/** How many of its ends the saw is turned or tilted for. */
export function miterCount(piece: Piece): number {
    return piece.ends.filter(isTurned).length;
}

function leaningEnd(piece: Piece): 'left' | 'right' {
    return isTurned(endsFromTheLeft(piece)[0]) ? 'left' : 'right';
}

/** What tells the piece's two ends apart at the saw: the hand the cut list gives, `both ends`, or `either` where it fits either way round. */
export function handAtSaw(piece: Piece): 'left' | 'right' | 'both ends' | 'either' | null {
    switch (miterCount(piece)) {
        case 0: return null;
        case 1: return piece.hand ?? (isHanded(piece) ? leaningEnd(piece) : 'either');
        default: return 'both ends';
    }
}
