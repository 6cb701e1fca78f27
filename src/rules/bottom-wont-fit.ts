import { fitAsBuilt } from '../ceiling/fit.ts';
import type { Fix, RelatedPlace } from '../findings/finding.ts';
import type { Bottom, JobSettings } from '../job/model.ts';
import { worstCase } from '../quantity/tolerance.ts';
import { defineRule, type Report } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { blocksTheChannel, bottomThatFits, inChannel, type InChannel } from './support/bottom-width.ts';
import { adding, replacing, spelledLike } from './support/fixes.ts';
import { widthSaidBy, wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = porchBox(`
  blocking {
    stock  poplar-1x6
    rip    5 7/16"
  }
  sides { stock poplar-1x8 }
  bottom {
    stock  poplar-1x6
    rip    5 1/2"
  }
`);

export const bottomWontFit = defineRule({
    name: 'bottom-wont-fit',
    severity: 'error',
    title: 'The bottom is wider than the channel it goes into',
    explanation: `
The width of the blocking is the width between the sides. The bottom is pushed up into that channel, so it must not be
wider: fit = channel - bottom, in all, not a side.

A bottom of 5 1/2" over blocking of 5 7/16" has a fit of -1/16": it will not go in. Rip the bottom to 5 7/16", or block
with a board as wide as the bottom.

It is a **warning** where the fit is right as drawn but the bottom has less play than \`gap\` asks for, or would be too wide
at the worst of the tolerances given:

- the tolerances of both widths. What is ripped at one fence setting (\`ripped-with\`, or \`rip ... with "fence A"\`) is off
  the same way, and that cancels: 4 1/2" in 4 1/2", both ± 1/64" from fence A, fits. Ripped at two settings, the bottom may
  be 1/64" over and the blocking 1/64" under: 1/32" too wide at worst, nearly 3/128" as root-sum-square (the
  square root of 1/64" squared + 1/64" squared), which is what it comes to most of the time.
- the paint on the bottom's two edges, at the job's \`paint-film\`. It counts where a tolerance is given, or the job gives
  \`paint-film\` itself; two edges at 0.006" are 0.012".`,
    wrong,
    right: changed(wrong, '5 1/2"', '5 7/16"'),
    basis: 'Play of 0" to 1/32" in all and paint of 0.004" to 0.006" an edge: common practice, no source.',
    silentAfter: ['too-wide-for-stock'],
    check: {
        section({ section, job }, report) {
            const known = inChannel(section);
            if (!known) return;
            const { fit, channel, width, bottom, said } = known, size = sizesOf(job), { least } = bottom.gap.value;
            const right = size(bottomThatFits(known, job) ?? channel.ticks - least);
            const related = blockingOf(known, job);
            const blocking = related.length > 0 ? ` (the blocking is ${size(channel.ticks)})` : '';
            const at = { ...wordsOf(said), related };
            if (fit.ticks < 0) {
                report({
                    ...at, fixes: ripping(known, job),
                    message: `The bottom will not go in: it is ${size(width.ticks)} wide and there is ${size(channel.ticks)} between ${inRabbets(bottom) ? 'the rabbets' : 'the sides'}${blocking}. `
                        + `Rip the bottom to ${right}${!blocksTheChannel(section.profile) ? '' : `, or block with a ${size(width.ticks + least)} board`}.`,
                });
            } else if (fit.ticks < least) {
                report({
                    ...at, severity: 'warning', fixes: ripping(known, job),
                    message: `The bottom goes in with ${size(fit.ticks)} of play, and the gap asks for ${size(least)} at least: it is ${size(width.ticks)} wide `
                        + `in a channel of ${size(channel.ticks)}${blocking}. Rip it to ${right}.`,
                });
            } else checkWorstCase(known, job, at, report);
        },
    },
});

/** Fit less everything that is said to be off, and less the paint on two edges. */
function checkWorstCase(known: InChannel, job: JobSettings, at: ReturnType<typeof wordsOf> & { related: RelatedPlace[] }, report: Report): void {
    const { fit, channel, width } = known, built = fitAsBuilt(fit, job), off = worstCase(fit.tolerance);
    const atWorst = built.worst.least, usual = built.usual.least;
    if (!built.paintCounts || atWorst >= 0) return;
    const size = sizesOf(job), { fine, told } = size;
    const causes = [...off > 0 ? [`both widths off by their full tolerance (${fine(off)} together)`] : [], `paint on its two edges (${fine(built.paint.most)})`];
    report({
        ...at, severity: 'warning', fixes: fit.tolerance.length > 1 ? [] : ripping(known, job),
        message: `The bottom is ${size(width.ticks)} wide in a channel of ${size(channel.ticks)}, which leaves ${size(fit.ticks)}: `
            + `with ${causes.join(' and ')} it is ${told(-atWorst)} too wide at worst, `
            + `and as root-sum-square ${usual < 0 ? `${told(-usual)} too wide` : `there is ${told(usual)} to spare`}. ${remedy(known, job)}`,
    });
}

/** One fence setting for both widths makes their errors one; whether that is enough depends on the rest. */
function remedy(known: InChannel, job: JobSettings): string {
    const { fit, channel, width } = known, size = sizesOf(job), off = worstCase(fit.tolerance), film = 2 * job.paintFilm.value.most;
    const narrower = size.most(off + film - fit.ticks), right = bottomThatFits(known, job);
    if (fit.tolerance.length <= 1) return `Rip the bottom ${narrower} narrower${right === undefined ? '' : `: ${size(right)}`}.`;
    const together = Math.abs(worstCase(channel.tolerance) - worstCase(width.tolerance));
    if (fit.ticks - together - film >= 0) return 'Rip both at one fence setting, so that they are off together, and it fits.';
    return `Ripping both at one fence setting takes ${size.fine(off - together)} of that away; without it, rip the bottom ${narrower} narrower.`;
}

function inRabbets({ place }: Bottom): boolean {
    return place.value === 'in-rabbets';
}

/** What says how wide the channel is, where that is the blocking. */
function blockingOf({ section, channel }: InChannel, job: JobSettings): RelatedPlace[] {
    const said = widthSaidBy(section.profile.blocking);
    if (!said || !blocksTheChannel(section.profile)) return [];
    return [{ at: said.at, message: `the blocking, and so the channel, is ${sizesOf(job)(channel.ticks)} wide` }];
}

/**
 * Ripping the bottom so that nothing is left to say of it, and not where spacers of another width would then bind.
 */
function ripping(known: InChannel, job: JobSettings): Fix[] {
    const { section: { spacerWidth }, bottom } = known, width = bottomThatFits(known, job);
    if (width === undefined || spacerWidth && (spacerWidth.ticks < width || spacerWidth.ticks > width + bottom.gap.value.most)) return [];
    const title = `Rip the bottom to ${sizesOf(job)(width)}`;
    return bottom.rip ? replacing(bottom.rip, spelledLike(bottom.rip.value, width, job), title) : adding(bottom, `rip ${sizesOf(job)(width)}`, title);
}
