import type { JobSettings } from '../job/model.ts';
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../quantity/ticks.ts';
import type { Line } from './model.ts';

/** Where the profile says nothing. Common practice, no source. */
const USUAL = { 'feet-inches': TICKS_PER_INCH / 16, millimeters: 1.5 * TICKS_PER_MM };

/**
 * What a piece of blocking is cut short, in all, where it goes in between pieces that are up already: dead tight it would have to be
 * driven, and would push them off their lines. So it is at both its ends, also where one of them is a wall or a band. What runs
 * through goes up first, into the room as it was measured, and has nothing to be driven between.
 */
export function reliefOf({ section: { profile: { blocking } } }: Pick<Line, 'section'>, { show }: Pick<JobSettings, 'show'>): Ticks {
    return blocking?.relief?.value ?? USUAL[show.value];
}

/** Where the profile says nothing. Common practice, no source. */
const USUALLY_CLEAR = { 'feet-inches': TICKS_PER_INCH / 8, millimeters: 3 * TICKS_PER_MM };

/** How far blocking stays clear of the face of a deeper beam that it dies into, so that the side of that gets past. */
export function clearanceOf({ section: { profile: { blocking } } }: Pick<Line, 'section'>, { show }: Pick<JobSettings, 'show'>): Ticks {
    return blocking?.clearance?.value ?? USUALLY_CLEAR[show.value];
}
