import type { Ceiling } from '../ceiling/model.ts';
import { inches } from '../quantity/rational.ts';
import { TICKS_PER_FOOT, type Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { footOf, hits, placed, type Placed } from './support/in-the-way.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** How far from the side of a beam a standard spray sprinkler is at the least so that its deflector may be so far above the beam's underside. */
const BEAM_RULE: readonly (readonly [away: Ticks, above: Ticks])[] = ([
    ['12', '2 1/2'], ['18', '3 1/2'], ['24', '5 1/2'], ['30', '7 1/2'], ['36', '9 1/2'], ['42', '12'], ['48', '14'], ['54', '16 1/2'], ['60', '18'],
] as const).map(([away, above]) => [inches(away), inches(above)]);

const wrong = changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"\n  fixture head-1 sprinkler at 2', 2' hangs 2"\n`);

export const sprinklerBehindBeam = defineRule({
    name: 'sprinkler-behind-beam',
    severity: 'warning',
    title: 'A beam hangs in the spray of a sprinkler',
    explanation: `
A sprinkler that was right under a flat ceiling may not be right between beams: what hangs lower than its deflector stands in its spray. The
published table for standard spray sprinklers lets the deflector be above the underside of a beam by 0" within 12" of its side, by
2 1/2" from 12" on, 3 1/2" from 18", 5 1/2" from 24", 7 1/2" from 30", 9 1/2" from 36" (NFPA 13, from memory; sprinklers for houses and
others have tables of their own, by their listing).

A deflector 2" below the ceiling of the hall is 3 3/4" above beams that are 5 3/4" deep. In the middle of a coffer it is 24" from their
sides, and there 5 1/2" is allowed by that table; 15" from them it is not. It is looked at where the sprinkler says how far it
\`hangs\`, to its deflector. Whether a sprinkler is well placed is for a licensed sprinkler contractor and the code in force to say.`,
    wrong: changed(wrong, `at 2', 2' hangs 2"`, `at 33", 2' hangs 2"`),
    right: wrong,
    basis: 'NFPA 13, table for standard pendent and upright spray sprinklers beside an obstruction, from memory; the code in force decides.',
    check: {
        room({ layout: { room, ceiling }, job }, report) {
            if (!ceiling) return;
            const size = sizesOf(job);
            for (const one of placed(room.fixtures)) {
                const { fixture: { name, kind, hangs } } = one;
                if (kind !== 'sprinkler' || !hangs) continue;
                const worst = obstructions(one, hangs.value, ceiling)[0];
                if (!worst) continue;
                report({
                    ...wordsOf(hangs),
                    message: `The deflector of ${name} is ${size(worst.above)} above the underside of ${worst.name}, ${size(worst.away)} from its side: a published table allows ${size(allowedAt(worst.away))} there (NFPA 13, standard spray, from memory). `
                        + 'Have a licensed sprinkler contractor look at it before the blocking goes up; nobody else moves it.',
                });
            }
        },
    },
});

function allowedAt(away: Ticks): Ticks {
    return BEAM_RULE.findLast(([from]) => away >= from)?.[1] ?? 0;
}

interface Obstruction { readonly name: string; readonly away: Ticks; readonly above: Ticks }

/** What hangs lower than the deflector and nearer than the table has it, the worst first. Beams that it hangs in are told by another rule. */
function obstructions(one: Placed, hangs: Ticks, ceiling: Ceiling): Obstruction[] {
    const reach = BEAM_RULE.at(-1)![0] + TICKS_PER_FOOT;
    return hits(one, reach, ceiling).flatMap(hit => {
        const away = reach - hit.by, above = footOf(hit) - hangs;
        return away > 0 && above > allowedAt(away) ? [{ name: hit.name, away, above }] : [];
    }).sort((a, b) => b.above - allowedAt(b.away) - (a.above - allowedAt(a.away)));
}
