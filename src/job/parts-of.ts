import type { Profile } from './model.ts';
import type { Part } from './part.ts';

/** The block of a profile that says each part; what runs along walls is said in the grid. */
export const BLOCK_OF = { bottom: 'bottom', blocking: 'blocking', side: 'sides', cleat: 'cleats', spacer: 'spacers', molding: 'under', panel: 'back', timber: 'solid', trim: 'trim' } as const;
type PartOfBeam = keyof typeof BLOCK_OF;
export const PARTS_OF_BEAM = Object.keys(BLOCK_OF) as PartOfBeam[];

/** What a profile says of a part. */
export function blockOf(profile: Profile | undefined, part: Part): Profile[(typeof BLOCK_OF)[PartOfBeam]] {
    return part === 'band' ? undefined : profile?.[BLOCK_OF[part]];
}
