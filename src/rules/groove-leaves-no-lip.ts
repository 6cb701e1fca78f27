import { inches, millimeters } from '../quantity/rational.ts';
import { defineRule } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { replacingAt, spelledLike } from './support/fixes.ts';
import { sizesOf } from './support/words.ts';

/** What a rabbet leaves of the board's thickness at least, in the round figure of the tape that the job is measured with. */
const LIPS = { 'feet-inches': inches('3/8'), 'millimeters': millimeters('9.5') };

const wrong = porchBox(`
  blocking { stock poplar-1x6 }
  sides {
    stock   poplar-1x8
    rabbet  7/16" x 1/4" on lower-back
  }
  bottom { stock poplar-1x6 }
`);

export const grooveLeavesNoLip = defineRule({
    name: 'groove-leaves-no-lip',
    severity: 'error',
    title: 'The rabbet leaves too thin a lip',
    explanation: `
What the rabbet leaves of the side's thickness is the lip that shows from below and holds at the edge. Under 3/8" it
breaks in handling, and a nail near it comes through.

A rabbet 7/16" wide in a side of 3/4" leaves 5/16". 3/8" is the widest it can be there.`,
    wrong,
    right: changed(wrong, '7/16"', '3/8"'),
    basis: 'Lip of 3/8", 9.5 mm: common practice, no source.',
    check: {
        section({ section: { profile: { sides } }, job }, report) {
            const rabbet = sides?.rabbet;
            const stock = sides?.stock;
            const thickness = stock?.value.thickness?.value.ticks;
            if (!rabbet || thickness === undefined) return;
            const { width, widthAt } = rabbet.value;
            const least = LIPS[job.show.value];
            const lip = thickness - width.ticks;
            if (lip >= least) return;
            const size = sizesOf(job);
            const widest = thickness - least;
            report({
                at: widthAt, via: rabbet.via,
                message: `${lip > 0 ? `${size(lip)} of lip is left` : 'No lip is left'}: the rabbet is ${size(width.ticks)} wide and the side ${size(thickness)} thick. ${size(least)} is the least, `
                    + `or the edge breaks and the nails show${widest > 0 ? `: make the rabbet ${size(widest)} at most` : ''}.`,
                related: [{ at: stock!.at, message: `the side is ${size(thickness)} thick` }],
                fixes: widest > 0 ? replacingAt(rabbet, widthAt, spelledLike(width, widest, job), `Make the rabbet ${size(widest)} wide`) : [],
            });
        },
    },
});
