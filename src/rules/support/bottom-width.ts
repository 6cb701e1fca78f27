import type { Derived, Section } from '../../ceiling/model.ts';
import type { Bottom, JobSettings } from '../../job/model.ts';
import type { Given } from '../../provenance/source.ts';
import { inches, millimeters } from '../../quantity/rational.ts';
import { roundDown } from '../../quantity/round.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { worstCase } from '../../quantity/tolerance.ts';
import { spelled } from './fixes.ts';
import { widthSaidBy } from './places.ts';

/** A bottom that goes up into a channel, and all that its fit comes from. `said`: what says how wide it is. */
export interface InChannel {
    readonly section: Section; readonly bottom: Bottom; readonly said: Given<unknown>;
    readonly fit: Derived; readonly channel: Derived; readonly width: Derived;
}

/** Undefined of a bottom that lies under its sides, and where the text does not say enough. */
export function inChannel(section: Section): InChannel | undefined {
    const { profile: { bottom }, fit, channelWidth, bottomWidth } = section, said = widthSaidBy(bottom);
    // there is no fit without all of them
    return fit && said ? { section, bottom: bottom!, said, fit, channel: channelWidth!, width: bottomWidth! } : undefined;
}

/** Whether the channel is as wide as the blocking: not between rabbets, not in a box that is made at the bench, and not round a beam that has none. */
export function blocksTheChannel({ bottom, blocking }: Section['profile']): boolean {
    return bottom?.place.value === 'between-sides' && blocking?.fit.value === 'full-width';
}

/** The finest a width is set at the saw. */
const FINEST = { 'feet-inches': inches('1/128'), 'millimeters': millimeters('0.1') };

/**
 * The widest bottom of which nothing is left to say: it leaves the least gap, and room for what the text says may be off
 * and for paint where that counts. By the steps of the tape where the gap allows that. Undefined where no width does it.
 */
export function bottomThatFits({ bottom, channel, fit }: InChannel, job: JobSettings): Ticks | undefined {
    const { least, most } = bottom.gap.value;
    const counted = fit.tolerance.length > 0 || job.paintFilm.said;
    const widest = channel.ticks - (counted ? Math.max(least, Math.ceil(worstCase(fit.tolerance) + 2 * job.paintFilm.value.most)) : least);
    return [1, job.cutTo.value, FINEST[job.show.value]].map(step => roundDown(widest, step))
        .find(one => one > 0 && spelled(one, job) !== undefined && channel.ticks - one <= most);
}
