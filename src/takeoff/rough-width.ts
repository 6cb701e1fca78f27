import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from './model.ts';

type Ripped = Pick<Piece, 'part' | 'width' | 'thickness' | 'scribe'>;

/** What it is ripped to: its width, and what is left on its edge at the wall to be scribed. */
export function roughWidth({ part, width, scribe = 0 }: Omit<Ripped, 'thickness'>): Ticks {
    return part === 'timber' ? width : width + scribe;
}

/** Its other dimension: a timber along a wall stands with its depth upright, and is ripped to what it stands off the wall. */
export function roughThickness({ part, thickness, scribe = 0 }: Omit<Ripped, 'width'>): Ticks {
    return part === 'timber' ? thickness + scribe : thickness;
}
