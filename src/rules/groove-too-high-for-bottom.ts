import { inches } from '../quantity/rational.ts';
import { defineRule } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { replacingAt, spelledLike } from './support/fixes.ts';
import { sizesOf } from './support/words.ts';

/** Height over which the bottom's edge stands against the side at least, above the groove. */
const BEARING = inches('3/8');

const wrong = porchBox(`
  blocking { stock poplar-1x6 }
  sides {
    stock   poplar-1x8
    rabbet  1/4" x 5/8" on lower-back
  }
  bottom {
    stock  poplar-1x6
    ease   1/8"
  }
`);

export const grooveTooHighForBottom = defineRule({
    name: 'groove-too-high-for-bottom',
    severity: 'error',
    title: 'The groove is so high that you see past the bottom, or the bottom hardly bears',
    explanation: `
Above the groove the edge of the bottom stands against the side. What is left of it is the bearing:

    bearing = bottom thickness - eased back edge - height of the rabbet

A bottom of 3/4" with its back edges eased 1/8", beside a rabbet 5/8" high, bears on nothing: you look up past it into the
beam. That is an **error**. A bearing under 3/8" is a **warning**: the least gap shows there.`,
    wrong,
    right: changed(wrong, '5/8"', '1/4"'),
    basis: 'Geometry of the section; bearing of 3/8": common practice, no source.',
    check: {
        section({ section: { profile: { sides, bottom } }, job }, report) {
            const rabbet = sides?.rabbet;
            const stock = bottom?.stock;
            const thickness = stock?.value.thickness?.value.ticks;
            if (!rabbet || rabbet.value.edge !== 'lower' || rabbet.value.face !== 'back' || bottom?.place.value !== 'between-sides' || thickness === undefined) return;
            const { height, heightAt } = rabbet.value;
            const ease = bottom.ease?.value ?? 0;
            const bearing = thickness - ease - height.ticks;
            if (bearing >= BEARING) return;
            const size = sizesOf(job);
            const highest = thickness - ease - BEARING;
            const eased = ease > 0 ? ` with its back edges eased ${size(ease)}` : '';
            report({
                at: heightAt, via: rabbet.via,
                severity: bearing > 0 ? 'warning' : 'error',
                message: `${bearing > 0 ? `Only ${size(bearing)} of the bottom's edge bears against the side` : 'You will see up past the bottom through the groove'}: `
                    + `the rabbet is ${size(height.ticks)} high and the bottom ${size(thickness)} thick${eased}. `
                    + `${size(BEARING)} of bearing is the least${highest > 0 ? `: make the rabbet ${size(highest)} high at most` : ''}.`,
                related: [{ at: stock!.at, message: `the bottom is ${size(thickness)} thick` },
                    ...bottom.ease ? [{ at: bottom.ease.at, message: `its back edges are eased ${size(ease)}` }] : []],
                fixes: highest > 0 ? replacingAt(rabbet, heightAt, spelledLike(height, highest, job), `Make the rabbet ${size(highest)} high`) : [],
            });
        },
    },
});
