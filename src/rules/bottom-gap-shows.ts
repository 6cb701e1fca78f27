import type { Section } from '../ceiling/model.ts';
import type { Fix } from '../findings/finding.ts';
import type { JobSettings } from '../job/model.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { bottomThatFits } from './support/bottom-width.ts';
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
            const { fit, channelWidth, bottomWidth, profile } = section;
            const said = widthSaidBy(profile.bottom);
            if (!fit || !channelWidth || !bottomWidth || !profile.bottom || !said) return;
            const { most } = profile.bottom.gap.value;
            if (fit.ticks <= most) return;
            const size = sizesOf(job);
            const blocking = blocksTheChannel(profile) ? widthSaidBy(profile.blocking) : undefined;
            const right = bottomThatFits(section, job);
            report({
                ...wordsOf(said),
                severity: fit.ticks > Math.max(most, GAP_SHOWS) ? 'error' : 'warning',
                message: `${size.fine(fit.ticks / 2)} of gap shows on each side of the bottom: it is ${size(bottomWidth.ticks)} wide in a channel of ${size(channelWidth.ticks)}, `
                    + `and ${size.fine(most / 2)} a side is the most. ${advice(section, right, job)}`,
                related: blocking ? [{ at: blocking.at, message: `the channel is ${size(channelWidth.ticks)} wide` }] : [],
                fixes: fixes(section, right, job),
            });
        },
    },
});

/** Whether the channel is as wide as the blocking: not between rabbets, and not in a box that is made at the bench. */
function blocksTheChannel({ bottom, blocking }: Section['profile']): boolean {
    return bottom?.place.value === 'between-sides' && blocking?.fit.value !== 'bench-box';
}

/** A bottom that is as wide as its stock cannot be ripped wider: then it is the blocking that is too wide. */
function advice({ profile, bottomWidth, channelWidth }: Section, right: Ticks | undefined, job: JobSettings): string {
    if (!profile.bottom || !bottomWidth || !channelWidth) return '';
    const size = sizesOf(job);
    const { least } = profile.bottom.gap.value;
    if (!blocksTheChannel(profile)) return `Rip it to ${size(right ?? channelWidth.ticks - least)}, or make the channel ${size(bottomWidth.ticks + least)}.`;
    return profile.bottom.rip
        ? `Rip it to ${size(right ?? channelWidth.ticks - least)}, or block with a ${size(bottomWidth.ticks + least)} board.`
        : `Rip the blocking and the spacers to ${size(bottomWidth.ticks + least)}, or take the bottom from a wider board.`;
}

/** The bottom ripped wider where its board gives that, or else the blocking narrower where the spacers suit that. */
function fixes({ profile: { bottom, blocking }, bottomWidth, spacerWidth }: Section, width: Ticks | undefined, job: JobSettings): Fix[] {
    if (!bottom || !bottomWidth) return [];
    const widest = bottom.stock?.value.width?.value.ticks;
    if (bottom.rip) {
        if (widest === undefined || width === undefined || width > widest) return [];
        return replacing(bottom.rip, spelledLike(bottom.rip.value, width, job), `Rip the bottom to ${sizesOf(job)(width)}`);
    }
    const { least, most } = bottom.gap.value;
    const narrower = bottomWidth.ticks + least;
    if (!blocking?.rip || bottom.place.value !== 'between-sides' || blocking.fit.value === 'bench-box' || (spacerWidth && (spacerWidth.ticks < bottomWidth.ticks || spacerWidth.ticks > bottomWidth.ticks + most))) return [];
    return replacing(blocking.rip, spelledLike(blocking.rip.value, narrower, job), `Rip the blocking to ${sizesOf(job)(narrower)}`);
}
