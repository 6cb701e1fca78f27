import { fiberboardChange, isOffSeason, movingOf, yearOf, type Moving, type Year } from '../ceiling/moving.ts';
import { MOVEMENT } from '../data/movement.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import type { Piece } from '../takeoff/model.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { replacing } from './support/fixes.ts';
import { percentOf } from './support/percents.ts';
import { linesNamed, sizesOf } from './support/words.ts';
import { wordsOf } from './support/places.ts';

/** What a joint may stand open after the first heating season. */
const MOST = inches('1/32');

const wrong = changed(changed(changed(HALL, 'stock poplar-1x6 { size 1x6 }', 'stock poplar-1x6 { size 1x6; species yellow-poplar }'), 'stock poplar-1x8 { size 1x8 }', 'stock poplar-1x8 { size 1x8; species yellow-poplar }')
    .replaceAll('{ stock poplar-1x4 }', '{ stock poplar-1x6 }').replace('sides { stock poplar-1x6 }', 'sides { stock poplar-1x8 }'), `  wall east   9' 5"\n`, `  wall east   9' 9"\n  seasons { driest 20% at 68; dampest 55% at 75; goes-up-at 9% }\n`).replace(`12' 10"`, `13' 2"`);

export const jointOpensInWinter = defineRule({
    name: 'joint-opens-in-winter',
    severity: 'warning',
    title: 'Boards go up so damp that a joint will stand open after the first heating season',
    explanation: `
A bottom that stands against the edge of another one is left by half of what that one shrinks in width; the corners of a coffer open by
half of what the blocking shrinks, since it holds the sides of the beam together.

    opens = width x coefficient of the wood x (moisture when it goes up - moisture in the driest season) / 2

A poplar bottom of 5 1/2" that goes up at 9% and dries to 4.5% leaves 5.5 x 0.00289 x 4.5 / 2 = 0.036 inches, over
1/32", which is seen in paint. Let the boards lie in the heated room until a meter shows less, keep the room
damper in winter, or hold the joint: glue and biscuits take it up as long as the boards can give.

Fiberboard moves in length too, by 0.33% at most from air of 50% to air of 80%: a long piece opens both of its ends.

It is looked at where \`seasons\` has \`goes-up-at\`.`,
    wrong,
    right: changed(wrong, 'goes-up-at 9%', 'goes-up-at 7%'),
    basis: 'Movement: USDA FPL, Wood Handbook FPL-GTR-190 (2010), Eq. 13-2 and Table 13-5, some of its rows from memory; moisture: FPL-GTR-282 (2021), Eq. 4-5. 1/32" after one heating season: common practice, no source.',
    check: {
        room({ layout: { ceiling }, job, pieces }, report) {
            const year = ceiling && yearOf(ceiling.room), wet = year?.said.goesUpAt;
            // what only shrinks is said by stock-off-season
            if (!ceiling || !year || !wet || isOffSeason(wet.value, year)) return;
            const size = sizesOf(job), longest = longestFiberboard(pieces());
            const shorter = longest ? 0 - fiberboardChange(longest.back, year).driest : 0;
            if (longest && shorter > 2 * MOST) {
                report({
                    ...wordsOf(wet),
                    message: `${nameInRoom(longest)} is of fiberboard, ${size(longest.back)} long, and gets up to ${size.most(shorter)} shorter by the driest season: more than ${size.fine(MOST)} at each of its ends. Fiberboard moves in length as much as in width; boards do not. Take a board, make it of shorter pieces, or keep the room damper in winter.`,
                });
            }
            for (const moving of movingOf(ceiling, year)) {
                const { lines, butt, corner } = moving, opens = Math.max(butt?.driest ?? 0, corner.driest);
                if (opens <= MOST) continue;
                const most = mostMoisture(moving, year), better = most === undefined ? undefined : Math.floor(most * 2) / 2;
                const where = butt && butt.driest >= corner.driest ? `where bottoms stand against ${butt.at.length > 1 ? 'those' : 'that'} of ${linesNamed(butt.at)}` : `in the corners of the coffers along ${linesNamed(lines.map(({ name }) => name))}`;
                report({
                    ...wordsOf(wet),
                    message: `Up to ${size.most(opens)} will stand open ${where}, if nothing holds it: the boards go up at ${percentOf(wet.value)} and dry to ${percentOf(year.driest)}. Up to ${size.fine(MOST)} passes: `
                        + `${better !== undefined && better > year.driest ? `let them come to ${percentOf(better)} or less first` : 'keep the room damper in winter'}.`,
                    fixes: better !== undefined && better > year.driest ? replacing(wet, percentOf(better), `Put them up at ${percentOf(better)}`) : [],
                });
            }
        },
    },
});

/** The longest side or bottom of fiberboard. */
function longestFiberboard(pieces: readonly Piece[]): Piece | undefined {
    const all = pieces.filter(({ part, stock }) => (part === 'side' || part === 'bottom') && stock.species?.value === 'mdf');
    return all.reduce<Piece | undefined>((longest, one) => (!longest || one.back > longest.back ? one : longest), undefined);
}

/** At which moisture the joint that opens most stands open just so far; of fiberboard nobody knows. */
function mostMoisture({ section, inside, bottom, butt }: Moving, { driest }: Year): number | undefined {
    const limit = (width: Ticks, species: string | undefined): number => {
        const row = species === undefined ? undefined : MOVEMENT[species];
        return row ? driest + 2 * MOST / (width * row.tangential) : NaN;
    };
    const least = Math.min(limit(section.innerWidth.ticks, inside.species?.value), ...butt ? [limit(section.bottomWidth.ticks, bottom.species?.value)] : []);
    return Number.isFinite(least) ? least : undefined;
}
