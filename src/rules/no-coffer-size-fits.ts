import type { Fix } from '../findings/finding.ts';
import type { JobSettings, Spacing } from '../job/model.ts';
import { roundDown, roundTo, roundUp } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { replacing, spelled } from './support/fixes.ts';
import { troublesOf } from './support/troubles.ts';
import { alongWall, sizesOf } from './support/words.ts';
import { counted } from '../plain/words.ts';

const wrong = changed(HALL, `    coffers-north  3
    coffers-east   2
`, `    coffer-size    49" to 53"
`);

export const noCofferSizeFits = defineRule({
    name: 'no-coffer-size-fits',
    severity: 'error',
    title: 'No number of coffers gives the size that is asked for',
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
            const { grid } = layout.room;
            for (const { along, at, nearest } of troublesOf(layout, 'no-coffer-size-fits')) {
                const near = nearest.map(({ coffers, size: ticks }) => `${counted(coffers, 'coffer')} of ${size(roundTo(ticks, job.cutTo.value))}`);
                report({
                    at,
                    message: `No number of coffers comes out at that size ${alongWall(along)}${near.length ? `: the nearest ${near.length === 1 ? 'is' : 'are'} ${near.join(' and ')}` : ''}. `
                        + 'Widen the range to take one of them in, or use beams of another width.',
                    fixes: nearest.flatMap(near => takingIn(near, along === 'east-west' ? grid?.north : grid?.east, job)),
                });
            }
        },
    },
});

/** The range opened just so far that it takes this size in. */
function takingIn({ coffers, size: ticks }: { coffers: number; size: Ticks }, spacing: Spacing | undefined, job: JobSettings): Fix[] {
    if (spacing?.by !== 'size') return [];
    const { least, most } = spacing.size.value;
    const from = spelled(Math.min(least, roundDown(ticks, job.cutTo.value)), job);
    const to = spelled(Math.max(most, roundUp(ticks, job.cutTo.value)), job);
    return replacing(spacing.size, from && to && `${from} to ${to}`, `Ask for ${from} to ${to}: ${counted(coffers, 'coffer')}`);
}
