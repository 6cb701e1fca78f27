import { roundTo } from '../quantity/round.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';
import { alongWall, counted, sizesOf } from './support/words.ts';

const wrong = changed(HALL, `    coffers-north  3
    coffers-east   2
`, `    coffer-size    49" to 53"
`);

export const noCofferSizeFits = defineRule({
    name: 'no-coffer-size-fits',
    severity: 'error',
    title: 'No number of coffers brings them to the size that is asked for',
    explanation: `
With \`coffer-size\` the number of coffers is found for you: the one that brings all of them, equal, between the least and the
greatest size, both ways.

Between walls 12' 10" apart, beams of 5" leave 2 coffers of 6' 2 1/2" or 3 of 48". Asked for 49" to 53", neither will do: ask
for 48" to 54", or choose other beams.`,
    wrong,
    right: changed(wrong, '49" to 53"', '48" to 54"'),
    basis: 'Arithmetic.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job);
            for (const { along, at, nearest } of troublesOf(layout, 'no-coffer-size-fits')) {
                const near = nearest.map(({ coffers, size: ticks }) => `${counted(coffers, 'coffer')} of ${size(roundTo(ticks, job.cutTo.value))}`);
                report({
                    at,
                    message: `No number of coffers comes out at that size ${alongWall(along)}${near.length ? `: the nearest ${near.length === 1 ? 'is' : 'are'} ${near.join(' and ')}` : ''}. `
                        + 'Ask for a size that takes one of them in, or for beams of another width.',
                });
            }
        },
    },
});
