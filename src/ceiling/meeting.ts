import { relationByDepth } from '../arrangement/relation.ts';
import type { WholeSection } from './model.ts';

interface Beam { readonly section: Pick<WholeSection, 'depth' | 'profile'> }

/** The same of beams as they are laid out. What a line is said to do (`meets dies-into`) is not looked at. */
export function relationOfBeams(own: Beam, other: Beam): ReturnType<typeof relationByDepth> {
    const meeting = ({ section: { depth, profile } }: Beam) => ({ depth: depth.ticks, isSolid: profile.solid !== undefined });
    return relationByDepth(meeting(own), meeting(other));
}
