import type { JobSettings } from '../job/model.ts';
import { degreesOf, isTurned, sawDegrees } from '../takeoff/ends.ts';
import type { Piece } from '../takeoff/model.ts';

/**
 * Whether a piece may be cut straight from its board at a stop that reaches it while the saw is at an angle, first one end and then the other: both are
 * mitered, at one angle and with their long points on the same side. What has one square end is sooner cut square with all others; a crown has a
 * setting for each end; and a piece that is parted in two or cut to lines needs its blank.
 */
export function mayBeCutOnce({ ends: [first, last], cutOverall, work }: Piece, { miterStop }: Pick<JobSettings, 'miterStop'>): boolean {
    if (!miterStop || cutOverall > miterStop.value || first.flat || last.flat) return false;
    const isAlike = isTurned(first) && sawDegrees(first) === sawDegrees(last) && Math.sign(degreesOf(first)) === Math.sign(degreesOf(last));
    return isAlike && !work.some(({ kind }) => kind === 'halve' || kind === 'shape');
}
