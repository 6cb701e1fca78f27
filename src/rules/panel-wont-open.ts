import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { hits, placed } from './support/in-the-way.ts';
import { sizesOf } from './support/words.ts';
import { listed } from '../plain/words.ts';

const wrong = changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"\n  fixture hatch access-panel at 3' 5 1/2", 2' 3" width 12"\n`);

export const panelWontOpen = defineRule({
    name: 'panel-wont-open',
    severity: 'warning',
    title: 'An access panel or a speaker grille lies under the ceiling trim',
    explanation: `
An access panel has to come down, and a speaker's grille to come off: where the ceiling trim of a coffer lies over their edge, neither does.
Trim of 3/4" reaches so far into the coffer from the faces of its beams.

A panel of 12" whose center is 6 1/2" from the face of line 1 ends 1/2" from it: the trim covers 1/4" of it. Move it 1/4" to the west,
or cut the trim out around it. Where a beam itself goes over it, that is told as \`fixture-in-beam\`.`,
    wrong,
    right: changed(wrong, `at 3' 5 1/2"`, `at 3' 4"`),
    basis: 'Geometry of the plan. That what is closed in stays reachable: local codes decide.',
    check: {
        room({ layout: { room, ceiling }, job }, report) {
            const trim = ceiling?.beams?.trimThickness?.ticks;
            if (!ceiling || !trim) return;
            const size = sizesOf(job);
            for (const one of placed(room.fixtures)) {
                const { fixture: { name, kind, at, keepClear } } = one;
                if (kind !== 'access-panel' && kind !== 'speaker') continue;
                // what is nearer than it is to be is told by the rule of the beam
                if (hits(one, one.half + (keepClear?.value ?? 0), ceiling).length > 0) continue;
                const under = hits(one, one.half + trim, ceiling);
                if (under.length === 0) continue;
                const ways = under.map(({ name: of, by, way }) => `${size.off(by)} at ${of}, so it is clear ${size(Math.ceil(by / job.cutTo.value) * job.cutTo.value)} farther ${way}`);
                report({
                    at, message: `The ceiling trim lies over ${name}, ${listed(ways)}: ${kind === 'speaker' ? 'its grille could not come off' : 'it could not be opened'}. Have it moved, or cut the trim out around it.`,
                });
            }
        },
    },
});
