import type { WholeSection } from './model.ts';

interface Beam { readonly section: Pick<WholeSection, 'depth' | 'profile'> }

/**
 * Of two beams that meet, by their sections alone: equally deep ones are flush, but a box dies into a timber; else the shallower dies into the deeper. What
 * a line is said to do (`meets dies-into`) is not looked at.
 */
export function relationOf({ section: own }: Beam, { section: other }: Beam): 'flush' | 'dies' | 'over' {
    if (own.depth.ticks !== other.depth.ticks) return own.depth.ticks < other.depth.ticks ? 'dies' : 'over';
    const solid = own.profile.solid !== undefined;
    return solid === (other.profile.solid !== undefined) ? 'flush' : solid ? 'over' : 'dies';
}
