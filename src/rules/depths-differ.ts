import { inches } from '../quantity/rational.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';
import { sizesOf } from './support/words.ts';

/** A smaller step looks like a mistake: depths-nearly-equal speaks of it. */
export const STEP_THAT_READS = inches('1/2');

const wrong = changed(changed(HALL, '\nroom hall', `
profile deep-box like hall-box { sides.stock poplar-1x8 }

room hall`), '\n  grid {', '\n  line A { beams deep-box }\n\n  grid {');

export const depthsDiffer = defineRule({
    name: 'depths-differ',
    severity: 'error',
    title: 'Lines of two depths in one room are not computed yet',
    explanation: `
Where a shallow beam meets a deep one it dies into its side: other lengths, other corners, shorter blocking. That is not
computed yet, so nothing is cut for such a room.

Sides of 5 1/2" make a beam 5 3/4" deep, sides of 7 1/4" one of 7 1/2". Give both lines sides of one width, or hold the narrower
ones down further. A step under 1/2" is reported by \`depths-nearly-equal\`.`,
    wrong,
    right: changed(wrong, 'sides.stock poplar-1x8', 'bottom.ease 1/16"'),
    basis: 'A limit of the program.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job);
            for (const { lines, a, b, at, other } of troublesOf(layout, 'depths-differ')) {
                const step = Math.abs(a - b);
                if (step < STEP_THAT_READS) continue;
                report({
                    at,
                    message: `Line ${lines[0]} is ${size(a)} deep and line ${lines[1]} ${size(b)}: two depths in one room are not computed yet, so nothing is cut for it. `
                        + `Bring both to one depth; the step is ${size(step)}.`,
                    related: [{ at: other, message: `line ${lines[0]} is ${size(a)} deep` }],
                });
            }
        },
    },
});
