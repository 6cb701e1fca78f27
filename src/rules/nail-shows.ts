import { defineRule } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { HOLD, nailBetween, SHORT_OF_FACE, usingNail } from './support/nails.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = porchBox(`
  blocking { stock poplar-1x6 }
  sides { stock poplar-1x8 }
  cleats {
    rip    3/4" x 3/4" from strip-1x2
    nails  18 ga x 1 1/2" every 8"
  }
  bottom { stock poplar-1x6 }
`);

export const nailShows = defineRule({
    name: 'nail-shows',
    severity: 'error',
    title: 'The nails of the cleats come through the face of the side',
    explanation: `
Cleats are nailed from inside the beam, through the cleat into the back of the side. The point must stop 1/8" short of the
side's face, which shows.

    to the face = cleat + side - nail

A nail of 1 1/2" through a 3/4" cleat into a 3/4" side reaches the face. One of 1 1/4" stays 1/4" short of it and holds
1/2" in the side.`,
    wrong,
    right: changed(wrong, '1 1/2"', '1 1/4"'),
    basis: '1/8" short of the face: common practice, no source.',
    check: {
        section({ section: { profile: { cleats, sides } }, job }, report) {
            const nails = cleats?.nails;
            const cleat = cleats?.thickness?.value.ticks;
            const side = sides?.stock?.value.thickness?.value.ticks;
            if (!nails || cleat === undefined || side === undefined) return;
            const short = cleat + side - nails.value.length;
            if (short >= SHORT_OF_FACE) return;
            const size = sizesOf(job);
            const longest = cleat + side - SHORT_OF_FACE;
            const right = nailBetween(cleat + HOLD, longest, job);
            report({
                ...wordsOf(nails),
                message: `The nail ${short > 0 ? `stops only ${size(short)} short of` : short === 0 ? 'reaches' : `comes ${size(-short)} out of`} the face of the side: `
                    + `${size(nails.value.length)} through a cleat of ${size(cleat)} into a side of ${size(side)}. `
                    + (right === undefined ? `${size(longest)} is the longest.` : `Use ${size(right)}.`),
                related: [{ at: sides!.stock!.at, message: `the side is ${size(side)} thick` }],
                fixes: usingNail(nails, right, job),
            });
        },
    },
});
