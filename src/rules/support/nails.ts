import type { JobSettings, Nails } from '../../job/model.ts';
import type { Given } from '../../provenance/source.ts';
import { inches, millimeters } from '../../quantity/rational.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { replacing, spelled } from './fixes.ts';
import { sizesOf } from './words.ts';

/** What a nail holds in the second piece at least, and what its point stays short of a face that shows. */
export const HOLD = inches('3/8');
export const SHORT_OF_FACE = inches('1/8');

/** Lengths that finish nails and brads are sold in. */
const INCH_LENGTHS = ['1/2', '5/8', '3/4', '1', '1 1/4', '1 1/2', '1 3/4', '2', '2 1/2', '3'].map(inches);
const METRIC_LENGTHS = [15, 20, 25, 30, 35, 40, 45, 50, 55, 64].map(millimeters);

/** The longest nail on sale between two lengths, or undefined where there is none. */
export function nailBetween(least: Ticks, most: Ticks, job: JobSettings): Ticks | undefined {
    return (job.show.value === 'millimeters' ? METRIC_LENGTHS : INCH_LENGTHS).findLast(length => length >= least && length <= most);
}

/** The shortest nail on sale that is long enough. */
export function nailFrom(least: Ticks, job: JobSettings): Ticks | undefined {
    return (job.show.value === 'millimeters' ? METRIC_LENGTHS : INCH_LENGTHS).find(length => length >= least);
}

export function usingNail(nails: Given<Nails>, length: Ticks | undefined, job: JobSettings): ReturnType<typeof replacing> {
    const text = length === undefined ? undefined : spelled(length, job);
    return replacing(nails, text && `${nails.value.gauge} ga x ${text}`, `Use ${sizesOf(job)(length ?? 0)} nails`);
}
