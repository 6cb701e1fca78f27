import type { Profile, Rabbet } from '../../job/model.ts';

/**
 * The rabbet of the sides where it shows as a groove beside the bottom; one along an upper edge is hidden by the trim, and one in the lower
 * back edge by a bottom that lies under the sides or is let into it.
 */
export function grooveOf(profile: Profile): Rabbet | undefined {
    const rabbet = profile.sides?.rabbet?.value;
    const hidden = rabbet?.edge === 'lower' && rabbet.face === 'back' && profile.bottom !== undefined && profile.bottom.place.value !== 'between-sides';
    return rabbet?.edge === 'lower' && !hidden ? rabbet : undefined;
}
