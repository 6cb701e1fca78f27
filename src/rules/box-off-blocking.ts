import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { widthSaidBy, wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** What blocking is narrower than the box that is slipped over it, in all: least and most. */
const LEAST: Ticks = inches('1/16'), MOST: Ticks = inches('1/8');

const wrong = porchBox(`
  blocking {
    stock  poplar-1x6
    rip    5 1/2"
    fit    bench-box
  }
  sides { stock poplar-1x8 }
  bottom { stock poplar-1x6 }
`);

export const boxOffBlocking = defineRule({
    name: 'box-off-blocking',
    severity: 'error',
    title: 'A box made at the bench does not slip over its blocking, or hangs loose on it',
    explanation: `
A box of two sides and a bottom that is made at the bench is slipped up over blocking that hangs already, and nailed to it. For that the
blocking is 1/16" to 1/8" narrower than the box is inside. The box is as wide inside as its spacers; without spacers, as its bottom needs.

Around a bottom of 5 1/2" the box is 5 1/2" wide inside: it does not go over blocking of 5 1/2" (an **error**), and goes over blocking of
5 7/16" to 5 3/8". Blocking that is narrower than that leaves the nails little to draw the sides up to (a **warning**).`,
    wrong,
    right: changed(wrong, '5 1/2"', '5 7/16"'),
    basis: 'Blocking 1/16" to 1/8" narrower: common practice, no source.',
    silentAfter: ['too-wide-for-stock'],
    check: {
        section({ section: { profile, innerWidth, blockingWidth }, job }, report) {
            const { blocking, spacers, bottom } = profile;
            if (blocking?.fit.value !== 'bench-box') return;
            if (!spacers && bottom?.place.value === 'under-sides' && !bottom.overhang) {
                report({ ...wordsOf(blocking.fit), message: 'Nothing sets how wide the box is inside. Give it spacers, or give the overhang of the bottom beyond its sides.' });
            }
            if (!innerWidth || !blockingWidth) return;
            const size = sizesOf(job), narrower = innerWidth.ticks - blockingWidth.ticks;
            if (narrower >= LEAST && narrower <= MOST) return;
            const right = innerWidth.ticks - (narrower > MOST ? MOST : LEAST), board = blocking.stock?.value.width?.value.ticks;
            const is = narrower > 0 ? `${size.fine(narrower)} narrower than` : narrower === 0 ? 'as wide as' : `${size.fine(-narrower)} wider than`;
            const words = narrower <= 0 ? 'The box does not go over its blocking' : narrower < LEAST ? 'The box hardly goes over its blocking' : 'The box hangs loose on its blocking';
            report({
                ...wordsOf(widthSaidBy(blocking)!), severity: narrower > 0 ? 'warning' : 'error',
                message: `${words}: the blocking is ${size(blockingWidth.ticks)} wide, ${is} the box inside (${size(innerWidth.ticks)}). `
                    + `${board !== undefined && right > board ? `Take wider blocking, of ${size(right)}` : `Rip the blocking to ${size(right)}`}: ${size(LEAST)} to ${size(MOST)} narrower.`,
                related: [{ at: widthSaidBy(spacers ?? bottom)!.at, message: `the box is as wide inside as its ${spacers ? 'spacers' : 'bottom needs'}` }],
                fixes: blocking.rip && board !== undefined && right <= board ? replacing(blocking.rip, spelledLike(blocking.rip.value, right, job), `Rip the blocking to ${size(right)}`) : [],
            });
        },
    },
});
