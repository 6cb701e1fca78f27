import { fitAsBuilt } from '../ceiling/fit.ts';
import type { Section } from '../ceiling/model.ts';
import type { Fix, RelatedPlace } from '../findings/finding.ts';
import type { JobSettings } from '../job/model.ts';
import { worstCase } from '../quantity/tolerance.ts';
import { defineRule, type Report, type SectionSubject } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { bottomThatFits } from './support/bottom-width.ts';
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
  be 1/64" over and the blocking 1/64" under: 1/32" too wide at worst, 0.022" as root-sum-square (the square root of
  1/64" squared + 1/64" squared), which is what it comes to most of the time.
- the paint on the bottom's two edges, at the job's \`paint-film\`. It counts where a tolerance is given, or the job gives
  \`paint-film\` itself; two edges at 0.006" are 0.012".`,
    wrong,
    right: changed(wrong, '5 1/2"', '5 7/16"'),
    basis: 'Play of 0" to 1/32" in all and paint of 0.004" to 0.006" an edge: common practice, no source.',
    silentAfter: ['too-wide-for-stock'],
    check: {
        section({ section, job }, report) {
            const { fit, channelWidth, bottomWidth, profile } = section;
            const said = widthSaidBy(profile.bottom);
            if (!fit || !channelWidth || !bottomWidth || !profile.bottom || !said) return;
            const size = sizesOf(job);
            const least = profile.bottom.gap.value.least;
            const channel = size(channelWidth.ticks);
            const right = size(bottomThatFits(section, job) ?? channelWidth.ticks - least);
            const related = blockingOf(section, job);
            const blocking = related.length > 0 ? ` (the blocking is ${channel})` : '';
            const at = { ...wordsOf(said), related };
            if (fit.ticks < 0) {
                report({
                    ...at, fixes: ripping(section, job),
                    message: `The bottom will not go in: it is ${size(bottomWidth.ticks)} wide and there is ${channel} between ${inRabbets(section) ? 'the rabbets' : 'the sides'}${blocking}. `
                        + `Rip the bottom to ${right}${inRabbets(section) || isBox(section) ? '' : `, or block with a ${size(bottomWidth.ticks + least)} board`}.`,
                });
            } else if (fit.ticks < least) {
                report({
                    ...at, severity: 'warning', fixes: ripping(section, job),
                    message: `The bottom goes in with ${size(fit.ticks)} of play, and the gap asks for ${size(least)} at least: it is ${size(bottomWidth.ticks)} wide `
                        + `in a channel of ${channel}${blocking}. Rip it to ${right}.`,
                });
            } else checkWorstCase({ section, job }, at, report);
        },
    },
});

/** Fit less everything that is said to be off, and less the paint on two edges. */
function checkWorstCase({ section, job }: SectionSubject, at: ReturnType<typeof wordsOf> & { related: RelatedPlace[] }, report: Report): void {
    const { fit, channelWidth, bottomWidth } = section;
    const built = fitAsBuilt(section, job);
    if (!built?.paintCounts || !fit || !channelWidth || !bottomWidth) return;
    const off = worstCase(fit.tolerance);
    const atWorst = built.worst.least, usual = built.usual.least;
    if (atWorst >= 0) return;
    const { fine, ...size } = { fine: sizesOf(job).fine, of: sizesOf(job) };
    const causes = [off > 0 && `both widths off by their full tolerance (${fine(off)} together)`, `paint on its two edges (${fine(built.paint.most)})`];
    report({
        ...at, severity: 'warning', fixes: fit.tolerance.length > 1 ? [] : ripping(section, job),
        message: `The bottom is ${size.of(bottomWidth.ticks)} wide in a channel of ${size.of(channelWidth.ticks)}, which leaves ${size.of(fit.ticks)}: `
            + `with ${causes.filter(cause => cause !== false).join(' and ')} it is ${fine(-atWorst)} too wide at worst, `
            + `and as root-sum-square ${usual < 0 ? `${fine(-usual)} too wide` : `there is ${fine(usual)} to spare`}. ${remedy(section, job)}`,
    });
}

/** One fence setting for both widths makes their errors one; whether that is enough depends on the rest. */
function remedy(section: Section, job: JobSettings): string {
    const { fit, channelWidth, bottomWidth } = section;
    if (!fit || !channelWidth || !bottomWidth) return '';
    const size = sizesOf(job);
    const film = 2 * job.paintFilm.value.most;
    const narrower = size.fine(worstCase(fit.tolerance) + film - fit.ticks);
    const separate = fit.tolerance.length > 1;
    const together = Math.abs(worstCase(channelWidth.tolerance) - worstCase(bottomWidth.tolerance));
    const width = bottomThatFits(section, job);
    if (!separate) return `Rip the bottom ${narrower} narrower${width === undefined ? '' : `: ${size(width)}`}.`;
    if (fit.ticks - together - film >= 0) return 'Rip both at one fence setting, so that they are off together, and it fits.';
    return `Ripping both at one fence setting takes ${size.fine(worstCase(fit.tolerance) - together)} of that away; without it, rip the bottom ${narrower} narrower.`;
}

function inRabbets({ profile: { bottom } }: Section): boolean {
    return bottom?.place.value === 'in-rabbets';
}
function isBox({ profile: { blocking } }: Section): boolean {
    return blocking?.fit.value === 'bench-box';
}

function blockingOf({ profile, channelWidth, blockingWidth }: Section, job: JobSettings): RelatedPlace[] {
    const said = widthSaidBy(profile.blocking);
    if (!said || !blockingWidth || profile.blocking?.fit.value === 'bench-box' || blockingWidth.ticks !== channelWidth?.ticks) return [];
    return [{ at: said.at, message: `the blocking, and so the channel, is ${sizesOf(job)(blockingWidth.ticks)} wide` }];
}

/**
 * Ripping the bottom so that nothing is left to say of it, and not where spacers of another width would then bind.
 */
function ripping(section: Section, job: JobSettings): Fix[] {
    const { profile: { bottom }, spacerWidth } = section;
    const width = bottomThatFits(section, job);
    if (!bottom || width === undefined) return [];
    if (spacerWidth && (spacerWidth.ticks < width || spacerWidth.ticks > width + bottom.gap.value.most)) return [];
    const title = `Rip the bottom to ${sizesOf(job)(width)}`;
    if (bottom.rip) return replacing(bottom.rip, spelledLike(bottom.rip.value, width, job), title);
    return adding(bottom, `rip ${sizesOf(job)(width)}`, title);
}
