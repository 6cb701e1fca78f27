import { defineRule } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { widthSaidBy, wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = porchBox(`
  blocking { stock poplar-1x6 }
  spacers {
    stock   poplar-1x6
    rip     5 3/8"
    height  4"
  }
  sides { stock poplar-1x8 }
  bottom { stock poplar-1x6 }
`);

export const blockingOffWidth = defineRule({
    name: 'blocking-off-width',
    severity: 'error',
    title: 'Spacers and blocking set the sides at different widths',
    explanation: `
Above, the blocking holds the sides apart; further down the spacers do. The bottom needs both at the same width.

Blocking of 5 1/2" and spacers of 5 3/8" pull the sides in by 1/16" each at every spacer: a bottom of 5 1/2" binds there, and
the beam is wasp-waisted. Spacers wider than the blocking by more than the greatest \`gap\` push the sides out, and the gap
beside the bottom shows.

Rip both to the same width, best at one fence setting. Where the blocking itself does not suit the bottom,
\`bottom-wont-fit\` or \`bottom-gap-shows\` says so, and this rule is silent until that is fixed.`,
    wrong,
    right: changed(wrong, '5 3/8"', '5 1/2"'),
    basis: 'Geometry of the section.',
    silentAfter: ['too-wide-for-stock'],
    check: {
        section({ section, job }, report) {
            const { profile, spacerWidth, blockingWidth, bottomWidth, fit } = section;
            const blocking = widthSaidBy(profile.blocking);
            if (!spacerWidth || !blockingWidth || !blocking || profile.blocking!.fit.value === 'bench-box' || spacerWidth.ticks === blockingWidth.ticks) return;
            const gap = profile.bottom?.place.value === 'between-sides' ? profile.bottom.gap.value : undefined;
            if (fit && gap) {
                if (fit.ticks < 0 || fit.ticks > gap.most) return;              // the blocking is wrong: the bottom's rules say so
                const atSpacers = spacerWidth.ticks - bottomWidth!.ticks;
                if (atSpacers >= 0 && atSpacers <= gap.most) return;
            }
            const size = sizesOf(job);
            const off = spacerWidth.ticks - blockingWidth.ticks;
            const { rip, stock } = profile.spacers!, widest = stock?.value.width?.value.ticks ?? 0;
            report({
                ...wordsOf(widthSaidBy(profile.spacers)!),
                message: `The spacers ${off < 0 ? 'pull the sides in' : 'push the sides out'} by ${size.fine(Math.abs(off) / 2)} each: they are ${size(spacerWidth.ticks)} wide and the blocking is ${size(blockingWidth.ticks)}`
                    + `${bottomWidth ? `, for a bottom of ${size(bottomWidth.ticks)}` : ''}. Make both ${size(blockingWidth.ticks)}.`,
                related: [{ at: blocking.at, message: `the blocking is ${size(blockingWidth.ticks)} wide` }],
                fixes: rip && blockingWidth.ticks <= widest
                    ? replacing(rip, spelledLike(rip.value, blockingWidth.ticks, job), `Rip the spacers to ${size(blockingWidth.ticks)}`) : [],
            });
        },
    },
});
