import type { Section } from '../../ceiling/model.ts';
import type { JobSettings } from '../../job/model.ts';
import { inches, millimeters } from '../../quantity/rational.ts';
import { roundDown } from '../../quantity/round.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { worstCase } from '../../quantity/tolerance.ts';
import { spelled } from './fixes.ts';

/** The finest a width is set at the saw. */
const FINEST = { 'feet-inches': inches('1/128'), 'millimeters': millimeters('0.1') };

/**
 * The widest bottom of which nothing is left to say: it leaves the least gap, and room for what the text says may be off
 * and for paint where that counts. By the steps of the tape where the gap allows that. Undefined where no width does it.
 */
export function bottomThatFits({ profile: { bottom }, channelWidth, fit }: Section, job: JobSettings): Ticks | undefined {
    if (!bottom || !channelWidth || !fit) return undefined;
    const { least, most } = bottom.gap.value;
    const counted = fit.tolerance.length > 0 || job.paintFilm.said;
    const widest = channelWidth.ticks - (counted ? Math.max(least, Math.ceil(worstCase(fit.tolerance) + 2 * job.paintFilm.value.most)) : least);
    const width = [1, job.cutTo.value, FINEST[job.show.value]].map(step => roundDown(widest, step))
        .find(one => spelled(one, job) !== undefined && channelWidth.ticks - one <= most);
    return width !== undefined && width > 0 ? width : undefined;
}
