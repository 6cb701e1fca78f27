import { TICKS_PER_FOOT } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';

/** Longer than this a piece overhead wants two people. Common practice, no source. */
const ALONE = 8 * TICKS_PER_FOOT;

export function peopleFor(pieces: readonly Piece[]): 1 | 2 {
    return pieces.some(({ overall }) => overall > ALONE) ? 2 : 1;
}
