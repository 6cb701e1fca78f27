import type { Ticks } from '../quantity/ticks.ts';

interface Meeting { readonly depth: Ticks; readonly isSolid: boolean }

/**
 * What one of two beams that meet does, by their depths alone: equally deep ones are flush, but a box dies into a timber; else the shallower dies into the
 * deeper, which runs on over it.
 */
export function relationByDepth(own: Meeting, other: Meeting): 'flush' | 'dies' | 'over' {
    if (own.depth !== other.depth) return own.depth < other.depth ? 'dies' : 'over';
    return own.isSolid === other.isSolid ? 'flush' : own.isSolid ? 'over' : 'dies';
}
