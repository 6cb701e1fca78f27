import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from './model.ts';

/** What it is ripped to: its width, and what is left on its edge at the wall to be scribed. */
export function roughWidth({ width, scribe = 0 }: Pick<Piece, 'width' | 'scribe'>): Ticks {
    return width + scribe;
}
