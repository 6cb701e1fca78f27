import { inches } from '../quantity/rational.ts';
import { defineRule } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { heldDownOf, wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** What the side laps the blocking at least, so that a nail finds it. */
const LAP = inches('3/8');

const wrong = porchBox(`
  blocking { stock poplar-1x6 }
  sides {
    stock      poplar-1x8
    held-down  1/2"
  }
  bottom { stock poplar-1x6 }
`);

export const sideMissesBlocking = defineRule({
    name: 'side-misses-blocking',
    severity: 'error',
    title: 'The side is held down so far that its nails miss the blocking',
    explanation: `
The blocking lies against the ceiling and the side starts lower, by the held-down gap. What the side laps the blocking is
the blocking's thickness less that gap, and a nail needs 3/8" of it.

Blocking of 3/4" and sides held down 1/2" leave a lap of 1/4". Hold the sides down 3/8" or less, or fur the blocking down
by 1/8". Where the ceiling has a hollow the lap is less by its depth.`,
    wrong,
    right: changed(wrong, '1/2"', '3/8"'),
    basis: 'Overlap of 3/8": common practice, no source.',
    check: {
        section({ section, job }, report) {
            const blocking = section.profile.blocking?.stock;
            const thickness = blocking?.value.thickness?.value.ticks;
            const heldDown = heldDownOf(section);
            if (!blocking || thickness === undefined || !heldDown) return;
            const gap = heldDown.given.value.ticks;
            const lap = thickness - gap;
            if (lap >= LAP) return;
            const size = sizesOf(job);
            const most = thickness - LAP;
            const laps = lap > 0 ? `laps the blocking only ${size(lap)}` : 'does not lap the blocking at all';
            report({
                ...wordsOf(heldDown.given.said ? heldDown.given : blocking),
                message: `Nothing to nail to: the side ${laps}, as it is held down ${size(gap)} and the blocking is ${size(thickness)} thick. It needs ${size(LAP)}: `
                    + `${most >= 0 ? `hold the sides down ${size(most)} or less, or ` : ''}fur the blocking down ${size(LAP - lap)}.`,
                related: heldDown.given.said ? [{ at: blocking.at, message: `the blocking is ${size(thickness)} thick` }] : [],
                fixes: most >= 0 ? replacing(heldDown.given, spelledLike(heldDown.given.value, most, job), `Hold the sides down ${size(most)}`) : [],
            });
        },
    },
});
