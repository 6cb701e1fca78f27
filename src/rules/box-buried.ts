import { listed } from '../plain/words.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { hits, placed } from './support/in-the-way.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"\n  fixture box-1 junction-box at 4' 4", 2' 3" width 4"\n`);

export const boxBuried = defineRule({
    name: 'box-buried',
    severity: 'error',
    title: 'A junction box would be closed in by a beam, a half beam or a band',
    explanation: `
A junction box has to stay reachable without taking the building apart (NEC 314.29, from memory): it must not end up above a beam or behind
a band. A box of 4" at 4' 4" from the west wall lies under line 1, which stands from 4' to 4' 5".

Have it moved into a coffer before the blocking goes up. Where an access panel in the beam leads to it, its line says so, \`reached-by\` with
the panel's name. In a coffer under a panel the box is brought out to its face. What counts as reachable is for the local code and a
licensed electrician to say.`,
    wrong,
    right: changed(wrong, `at 4' 4", 2' 3"`, `at 2', 2' 3"`),
    basis: 'Boxes stay reachable: NEC 314.29, from memory; the local code decides. Geometry of the plan.',
    check: {
        room({ layout: { room, ceiling }, job }, report) {
            if (!ceiling) return;
            const size = sizesOf(job);
            for (const one of placed(room.fixtures)) {
                const { fixture: { name, kind, at, reachedBy } } = one;
                if (kind !== 'junction-box') continue;
                const near = hits(one, one.half, ceiling), over = near.length > 0 && listed([...new Set(near.map(each => each.name))]);
                const panel = reachedBy && room.fixtures.find(fixture => fixture.name === reachedBy.value);
                if (reachedBy && panel?.kind !== 'access-panel') {
                    report({ ...wordsOf(reachedBy), message: `${name} is to be reached by ${reachedBy.value}, which is ${panel ? `a ${panel.kind.replace('-', ' ')} and no access panel` : 'no access panel of this room'}.` });
                    continue;
                }
                if (!over || panel) continue;
                const ways = near.map(({ by, way }) => `${size(Math.ceil(by / job.cutTo.value) * job.cutTo.value)} farther ${way}`);
                report({
                    at,
                    message: `${name} would be buried by ${over}, and a box has to stay reachable (NEC 314.29, from memory). It is clear ${listed(ways)}: have it moved there before the blocking goes up, or keep an access panel and write \`reached-by\`. The local code and a licensed electrician decide.`,
                });
            }
        },
    },
});
