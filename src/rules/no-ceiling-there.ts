import { defineRule } from './rule.ts';
import { reachingInto, standingAtWalls } from '../ceiling/at-the-wall.ts';
import { changed, HALL } from './support/examples.ts';
import { sizesOf } from './support/words.ts';
import { capitalized, listed } from '../plain/words.ts';

const wrong = changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"\n  fixture blind pocket on south at 3' width 6' depth 5"\n`);

/** What is there in place of the ceiling. */
const INSTEAD: Readonly<Record<string, string>> = {
    'soffit': 'the soffit hangs there',
    'pocket': 'the ceiling is open there',
    'stair-opening': 'the ceiling is open there',
};
const MOST_NAMED = 6;

export const noCeilingThere = defineRule({
    name: 'no-ceiling-there',
    severity: 'error',
    title: 'A beam or a band reaches over a pocket or a stair opening, or into a soffit',
    explanation: `
A pocket for drapery, a stair opening and a soffit take a strip along a wall out of the ceiling. This pocket begins 3' from the wall's
west end, is 6' wide, and reaches 5" into the room:

    fixture blind pocket on south at 3' width 6' depth 5"

There is nothing there that blocking could be screwed to, and what runs along that wall hangs in the air or in the soffit. Lines 1 and 2
of the hall end at the south wall, 5" inside of the pocket. The room ends at its edge: its walls are written along that, here five for the
south wall. Or each line stops at another one before it.

What guards an opening to a stair, and what may be hung near it, is for the local code and licensed people to say.`,
    wrong,
    right: changed(changed(wrong, `  wall east   9' 5"\n`, `  wall east   9' 5"\n  wall east-of-blind 3' 10" heading west\n  wall blind-east 5" heading north\n  wall along-blind heading west\n  wall blind-west 5" heading south\n  wall west-of-blind 3' heading west\n  wall west   9' 5"\n`),
        `\n  fixture blind pocket on south at 3' width 6' depth 5"`, ''),
    basis: 'Geometry of the plan.',
    check: {
        room({ layout: { ceiling }, job }, report) {
            if (!ceiling) return;
            const size = sizesOf(job);
            for (const standing of standingAtWalls(ceiling)) {
                const { fixture: { name, kind, at }, atWall: { below }, wall } = standing;
                if (below !== undefined || !INSTEAD[kind]) continue;
                const reaching = reachingInto(standing, ceiling, 0);
                if (reaching.length === 0) continue;
                const named = reaching.slice(0, MOST_NAMED).map(one => `${one.name} (${size(one.into)})`), more = reaching.length - named.length;
                report({
                    at,
                    message: `${capitalized(listed([...named, ...more > 0 ? [`${more} more`] : []]))} ${reaching.length > 1 ? 'reach' : 'reaches'} into the `
                        + `${kind.replace('-', ' ')} ${name} at the ${wall.name} wall: ${INSTEAD[kind]}. `
                        + `Write walls along its edge, so that the room ends there; or stop the ${reaching.some(({ what }) => what !== 'trim' && 'kind' in what) ? 'beams and what runs along the wall' : 'beams'} before it.`,
                    related: reaching.flatMap(({ what, name: beam }) => (what === 'trim' || !('at' in what) ? [] : [{ at: what.at, message: `${beam} is set here` }])),
                });
            }
        },
    },
});
