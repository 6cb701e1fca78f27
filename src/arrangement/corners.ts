import { turn } from '../plane/line.ts';
import type { Flank } from './carriers.ts';
import type { Corners } from './plan.ts';

/** How a side's end is cut where it meets the side of another flank in a coffer's corner, or dies. */
export type SideCut = 'miter' | 'outside-miter' | 'past' | 'butt' | 'dies' | 'splice';

/** Where a coffer is walked from one flank to the next, the corner turns right, or left: an outside corner. */
export function isOutside(before: Flank, after: Flank): boolean {
    return turn(before.base, after.base) < 0;
}

/**
 * The end of a side of `own` in the corner with `other`. Butted, the family that is said to run past runs past; of two that both are
 * said to, or neither, the one whose bottom runs through (a half beam's always does), else the carrier that is named first.
 */
export function sideCut(own: Flank, other: Flank, outside: boolean, corners: Corners, ownRunsThrough: boolean | undefined): SideCut {
    if (outside) return 'outside-miter';
    if (corners.kind === 'mitered') return 'miter';
    const said = (flank: Flank): boolean => flank.of.family === corners.past || flank.of.name === corners.past;
    if (said(own) !== said(other)) return said(own) ? 'past' : 'butt';
    return ownRunsThrough ?? own.of.index < other.of.index ? 'past' : 'butt';
}
