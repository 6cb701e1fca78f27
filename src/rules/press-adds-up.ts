import type { Line } from '../ceiling/model.ts';
import { pressedRuns } from '../ceiling/run-errors.ts';
import { inches } from '../quantity/rational.ts';
import { roundDown } from '../quantity/round.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { replacing, spelled } from './support/fixes.ts';
import { spacingSaidBy, wordsOf } from './support/places.ts';
import { linesNamed, sizesOf } from './support/words.ts';

/** What bottoms may press in one run, all of them together. */
export const MOST_PRESS = inches('1/16');

const wrong = changed(changed(HALL, 'room hall', 'job "Press" { cut-to 1/64" }\n\nroom hall'), 'bottom { stock poplar-1x4 }', `bottom {
    stock  poplar-1x4
    press  1/32"
  }`);

export const pressAddsUp = defineRule({
    name: 'press-adds-up',
    severity: 'warning',
    title: 'Bottoms cut long to press their joints add up to too much in one run',
    explanation: `
A bottom cut a little long (\`press\`) closes its end joints. In one run the pieces add up: more than 1/16" in all bows the
last one, or drives the lines apart.

Three bottoms, each 1/32" long, press 3/32" in the run. 1/64" each is 3/64".`,
    wrong,
    right: changed(wrong, 'press  1/32"', 'press  1/64"'),
    basis: '1/32" a piece, not over 1/16" a run: common practice, no source.',
    check: {
        room({ layout: { ceiling }, job }, report) {
            if (!ceiling) return;
            const size = sizesOf(job);
            for (const { lines, pieces } of pressedRuns(ceiling)) {
                const [{ runs, section: { profile: { bottom } } }] = lines as [Line], press = bottom?.press;
                if (!press || pieces < 2 || pieces * press.value <= MOST_PRESS) continue;
                const said = spacingSaidBy((runs === 'east-west' ? ceiling.across : ceiling.down).spacing);
                const right = roundDown(MOST_PRESS / pieces, job.cutTo.value);
                report({
                    ...wordsOf(said),
                    message: `The bottoms of ${linesNamed(lines.map(line => line.name))} press ${size(pieces * press.value)} in one run: ${pieces} pieces, each cut ${size(press.value)} long. `
                        + `${size(MOST_PRESS)} in all is the most: ${right > 0 ? `${size(right)} each` : 'use a finer \`cut-to\` and a smaller press, or none'}.`,
                    related: [{ at: press.at, message: `each bottom is cut ${size(press.value)} long` }],
                    // in another file the same detail may serve rooms with shorter runs
                    fixes: press.at.uri === said.at.uri && right > 0 ? replacing(press, spelled(right, job), `Press ${size(right)} each`) : [],
                });
            }
        },
    },
});
