import { cutStep } from '../ceiling/limits.ts';
import type { Trouble } from '../ceiling/model.ts';
import { sameSource } from '../provenance/source.ts';
import { defineRule, type Found } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';

const wrong = changed(changed(HALL, '\nroom hall', `
profile low-box like hall-box { sides.stock poplar-1x4 }

room hall`), 'through        north-south', `through        north-south
    perimeter {
      kind   half-beam
      width  2 1/4"
      beams  low-box
    }`);

export const notSupportedLayout = defineRule({
    name: 'not-supported-layout',
    severity: 'error',
    title: 'A ceiling that can be written down but is not computed yet',
    explanation: `
The language can say more than the program can lay out today. What it cannot compute it does not guess: no piece is cut for
such a room, and this says which words are the reason and what can be computed instead.

Beams 5 3/4" deep that meet a half beam of 3 3/4" round the walls are not computed yet. A half beam as deep as they are is computed, and
a deeper one, which they die into.`,
    wrong,
    right: changed(wrong, '      beams  low-box\n', ''),
    basis: 'A limit of the program.',
    check: {
        job({ job }, report) {
            const troubles: Trouble[] = [];
            cutStep(job, troubles);
            for (const trouble of troubles) if (trouble.kind === 'not-supported') report(found(trouble));
        },
        room({ layout, job }, report) {
            for (const trouble of troublesOf(layout, 'not-supported')) if (!sameSource(trouble.at, job.cutTo.at)) report(found(trouble));
            const { grid, lines } = layout.room;
            const profiles = new Set([grid?.beams, ...lines.map(line => line.beams)].flatMap(beams => beams ? [beams.value] : []));
            for (const at of [...profiles].flatMap(profile => profile.notComputed.slice(0, 1))) {
                report(found({ what: 'what this part does to the beam', instead: 'the beam without it', at }));
            }
            for (const at of lines.flatMap(line => line.notComputed.slice(0, 1))) {
                report(found({ what: 'a line that does not run from wall to wall, flush with the others', instead: 'a line that does', at }));
            }
        },
    },
});

function found({ what, instead, at }: Pick<Extract<Trouble, { kind: 'not-supported' }>, 'what' | 'instead' | 'at'>): Found {
    return { at, message: `Not computed yet: ${what}. Computed is ${instead}.` };
}
