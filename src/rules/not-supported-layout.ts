import { cutStep } from '../ceiling/limits.ts';
import type { Trouble } from '../ceiling/model.ts';
import { sameSource } from '../provenance/source.ts';
import { defineRule, type Found } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';

const wrong = changed(changed(HALL, '\nroom hall', `
profile butted-box like hall-box { sides.corners butted }

room hall`), '\n  grid {', '\n  line A { beams butted-box }\n\n  grid {');

export const notSupportedLayout = defineRule({
    name: 'not-supported-layout',
    severity: 'error',
    title: 'A ceiling that can be written, and not laid out as it is written',
    explanation: `
The language can say what no carpenter can build: a figure or a word that contradicts another one, a piece where nothing holds it, a
number that is a slip. Such a room has no pieces, and this says which words are the reason, why it cannot be, and what can be instead.

Sides that are butted cannot meet sides that are mitered: the corner where line A crosses line 1 would be both. All of them are
mitered, or all butted.`,
    wrong,
    right: changed(wrong, '{ sides.corners butted }', '{ sides.corners mitered }'),
    basis: 'Geometry.',
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
        },
    },
});

type NotSupported = Extract<Trouble, { kind: 'not-supported' }>;

function found({ what, because, instead, at }: Omit<NotSupported, 'kind'>): Found {
    return { at, message: because ? `This cannot be: ${what}, since ${because}. What can be: ${instead}.` : `Not computed yet: ${what}. What can be computed: ${instead}.` };
}
