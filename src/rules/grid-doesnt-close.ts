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

Four beams of 5" and coffers between them want more than the 18" a recess is long: 4 x 5" = 20", before there is any coffer.
Take fewer coffers, or a narrower beam.`,
    wrong: changed(HALL, 'coffers-north  3', 'coffers-north  32'),
    right: HALL,
    basis: 'Arithmetic.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job);
            for (const { along, wanted, has, at, parts } of troublesOf(layout, 'grid-doesnt-close')) {
                report({
                    at,
                    message: `${wanted > has ? `${size(wanted - has)} too much` : 'Nothing is left for a coffer'} ${alongWall(along)}: ${parts} makes ${size(wanted)}, and there are ${size(has)}.`,
                });
            }
        },
    },
});
