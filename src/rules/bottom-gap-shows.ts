import type { Fix } from '../findings/finding.ts';
import type { JobSettings } from '../job/model.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { blocksTheChannel, bottomThatFits, inChannel, type InChannel } from './support/bottom-width.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { widthSaidBy, wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** From here on everybody sees it, whatever gap the profile allows. */
export const GAP_SHOWS = inches('1/16');

const wrong = porchBox(`
  blocking { stock poplar-1x6 }
  sides { stock poplar-1x8 }
  bottom {
    stock  poplar-1x6
    rip    5 3/8"
  }
`);

export const bottomGapShows = defineRule({
    name: 'bottom-gap-shows',
    severity: 'warning',
    title: 'The bottom is so narrow that the gap beside it shows',
    explanation: `
The play between the bottom and the sides, in all, may be what \`gap\` allows: 0" to 1/32" where nothing else is said, which
is 1/64" a side. More shows as a dark line beside the bottom, and a groove does not hide it.

A bottom of 5 3/8" in a channel of 5 1/2" leaves 1/8": 1/16" on each side. Over 1/16" in all (and over the gap that is
asked for) it is an **error**.

Rip the bottom to the channel less the least gap, or block with a narrower board.`,
    wrong,
    right: changed(wrong, '5 3/8"', '5 1/2"'),
    basis: 'Play of 0" to 1/32" in all, and over 1/16" shows: common practice, no source.',
    check: {
        section({ section, job }, report) {
            const known = inChannel(section);
            if (!known) return;
            const { fit, channel, width, bottom, said } = known, { most } = bottom.gap.value;
            if (fit.ticks <= most) return;
            const size = sizesOf(job);
            const blocking = blocksTheChannel(section.profile) ? widthSaidBy(section.profile.blocking) : undefined;
            const right = bottomThatFits(known, job);
            // it is told by eye, at the nearest 64th; figures that would be the same there say by how little they differ
            const nearest = (play: number): string => size.gap(play / 2).replace('~', ''), gap = nearest(fit.ticks) === nearest(most) ? size.fine : size.gap;
            report({
                ...wordsOf(said),
                severity: fit.ticks > Math.max(most, GAP_SHOWS) ? 'error' : 'warning',
                message: `${gap(fit.ticks / 2)} of gap shows on each side of the bottom: it is ${size(width.ticks)} wide in a channel of ${size(channel.ticks)}, `
                    + `and ${gap(most / 2)} a side is the most. ${advice(known, right, job)}`,
                related: blocking ? [{ at: blocking.at, message: `the channel is ${size(channel.ticks)} wide` }] : [],
                fixes: fixes(known, right, job),
            });
        },
    },
});

/** A bottom that is as wide as its stock cannot be ripped wider: then it is the blocking that is too wide. */
function advice({ section: { profile }, bottom, width, channel }: InChannel, right: Ticks | undefined, job: JobSettings): string {
    const size = sizesOf(job), { least } = bottom.gap.value, narrower = size(width.ticks + least);
    const ripped = right ?? channel.ticks - least, isWideEnough = bottom.rip && ripped <= (bottom.stock?.value.width?.value.ticks ?? Infinity);
    const wider = isWideEnough ? `Rip it to ${size(ripped)}` : 'Take the bottom from a wider board';
    if (!blocksTheChannel(profile)) return `${wider}, or make the channel ${narrower}.`;
    return bottom.rip ? `${wider}, or block with a ${narrower} board.` : `Rip the blocking and the spacers to ${narrower}, or take the bottom from a wider board.`;
}

/** The bottom ripped wider where its board gives that, or else the blocking narrower where the spacers suit that. */
function fixes({ section: { profile, spacerWidth }, bottom, width }: InChannel, right: Ticks | undefined, job: JobSettings): Fix[] {
    const size = sizesOf(job), { rip, stock } = bottom, { blocking } = profile;
    if (rip) {
        const widest = stock?.value.width?.value.ticks;
        return right === undefined || widest === undefined || right > widest ? [] : replacing(rip, spelledLike(rip.value, right, job), `Rip the bottom to ${size(right)}`);
    }
    if (!blocksTheChannel(profile)) return [];
    const { least, most } = bottom.gap.value, narrower = width.ticks + least;
    if (!blocking!.rip || spacerWidth && (spacerWidth.ticks < width.ticks || spacerWidth.ticks > width.ticks + most)) return [];
    return replacing(blocking!.rip, spelledLike(blocking!.rip.value, narrower, job), `Rip the blocking to ${size(narrower)}`);
}
