import { roundTo } from '../quantity/round.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';
import { alongWall, sizesOf } from './support/words.ts';

export const gridDoesntClose = defineRule({
    name: 'grid-doesnt-close',
    severity: 'error',
    title: 'Coffers, beams and bands do not add up to the room',
    explanation: `
Along every wall coffers + beams + bands = wall. What is asked for has to leave room for it.

Four beams of 5" and coffers between them need more than the 18" that a recess is long: 4 x 5" = 20", before there is any coffer.
Take fewer coffers, or a narrower beam. The message says how many go in that are at least three times as wide as a beam.`,
    wrong: changed(HALL, 'coffers-north  3', 'coffers-north  32'),
    right: HALL,
    basis: 'Arithmetic; that a coffer is at least three times as wide as a beam is common practice, no source.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job);
            for (const { along, wanted, has, at, parts, fits } of troublesOf(layout, 'grid-doesnt-close')) {
                report({
                    at,
                    message: `${wanted > has ? `${size(wanted - has)} too much` : 'Nothing is left for a coffer'} ${alongWall(along)}: ${parts} makes ${size(wanted)}, and there is only ${size(has)}.`
                        + (fits ? ` ${fits.coffers} coffers would be about ${size(roundTo(fits.size, job.cutTo.value))} each.` : ''),
                });
            }
        },
    },
});
