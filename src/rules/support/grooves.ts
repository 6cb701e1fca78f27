import type { Profile, Rabbet } from '../../job/model.ts';

/** The rabbet of the sides where it shows as a groove beside the bottom; one along an upper edge is hidden by the trim. */
export function grooveOf(profile: Profile): Rabbet | undefined {
    const rabbet = profile.sides?.rabbet?.value;
    return rabbet?.edge.startsWith('lower') ? rabbet : undefined;
}
