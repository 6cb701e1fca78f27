import { defineRule } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { replacing, replacingAt, spelledLike } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = porchBox(`
  blocking { stock poplar-1x6 }
  sides {
    stock   poplar-1x8
    rabbet  1/4" x 5/8" on lower-back
  }
  bottom {
    stock  poplar-1x8
    rip    6"
    place  in-rabbets
  }
`);

export const bottomMissesRabbet = defineRule({
    name: 'bottom-misses-rabbet',
    severity: 'error',
    title: 'A bottom is let into rabbets that are missing or of the wrong size',
    explanation: `
A bottom that is let into its sides lies in a rabbet along the lower back edge of each. The rabbet is as wide as the bottom is let in, and
as high as the bottom is thick: then its face is flush with the lower edges of the sides.

    bottom = blocking + 2 x let in - play

Beside a bottom of 3/4" a rabbet 5/8" high leaves it 1/8" proud. \`in-rabbets let-in 1/4"\` alone is enough: the sides then get the rabbet
that it needs. Such sides meet in miters, since one that runs past would stand in the way of the bottom that crosses it.`,
    wrong,
    right: changed(wrong, '5/8"', '3/4"'),
    basis: 'Geometry of the section.',
    check: {
        section({ section: { profile: { sides, bottom } }, job }, report) {
            if (bottom?.place.value !== 'in-rabbets' || !sides) return;
            const size = sizesOf(job), { rabbet } = sides, { letIn } = bottom, thickness = bottom.stock?.value.thickness?.value;
            if (sides.corners.value === 'butted') {
                report({
                    ...wordsOf(sides.corners), related: [{ at: bottom.place.at, message: 'the bottom is let into the sides' }],
                    message: 'Sides with a bottom let into them do not meet in butted corners: the one that runs past stands in the way of the bottom that crosses it. Miter the corners.',
                    // with `past` behind it the words would not go together any more
                    fixes: sides.past?.said ? [] : replacing(sides.corners, 'mitered', 'Miter the corners'),
                });
            }
            if (!rabbet || rabbet.value.edge !== 'lower' || rabbet.value.face !== 'back') {
                if (!rabbet && letIn) return;                                                   // its thickness is not known
                report({
                    ...wordsOf(bottom.place), related: rabbet ? [{ at: rabbet.at, message: `this rabbet is on the ${rabbet.value.edge} ${rabbet.value.face} edge` }] : [],
                    message: `The bottom is to be let into rabbets, but the sides have none along their lower back edge. Give how far it is let in: \`in-rabbets let-in 1/4"\`${rabbet ? ', with no other rabbet' : ''}.`,
                });
                return;
            }
            const { width, height, widthAt, heightAt } = rabbet.value;
            if (letIn && letIn.value.ticks !== width.ticks) {
                report({
                    ...wordsOf(letIn), related: [{ at: widthAt, message: `the rabbet is ${size(width.ticks)} wide` }],
                    message: `The bottom is let in ${size(letIn.value.ticks)} and the rabbets of the sides are ${size(width.ticks)} wide. Make both the same, or give only one of them.`,
                    fixes: replacing(letIn, spelledLike(letIn.value, width.ticks, job), `Let it in ${size(width.ticks)}`),
                });
            }
            if (thickness && height.ticks !== thickness.ticks) {
                const off = thickness.ticks - height.ticks;
                report({
                    at: heightAt, via: rabbet.via, related: [{ at: bottom.stock!.at, message: `the bottom is ${size(thickness.ticks)} thick` }],
                    message: `The bottom ends ${size(Math.abs(off))} ${off > 0 ? 'below' : 'above'} the lower edges of the sides: it is ${size(thickness.ticks)} thick and its rabbets are ${size(height.ticks)} high. `
                        + `Make them ${size(thickness.ticks)} high.`,
                    fixes: replacingAt(rabbet, heightAt, spelledLike(height, thickness.ticks, job), `Make the rabbet ${size(thickness.ticks)} high`),
                });
            }
        },
    },
});
