import { movingOf, yearOf } from '../ceiling/moving.ts';
import { linesNamed, sizesOf } from './support/words.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { percentOf } from './support/percents.ts';
import { wordsOf } from './support/places.ts';

const wrong = changed(changed(changed(HALL, 'stock poplar-1x4 { size 1x4 }', 'stock poplar-1x4 { size 1x4; species yellow-poplar }\nstock board-4 { size 1x4; species mdf }'),
    '  bottom { stock poplar-1x4 }', '  bottom { stock board-4; gap 0" to 1/64" }'), `  wall east   9' 5"\n`, `  wall east   9' 5"\n  seasons { driest 25% at 68; dampest 60% at 75 }\n`);

export const mixedMovement = defineRule({
    name: 'mixed-movement',
    severity: 'warning',
    title: 'The bottom and what holds the sides apart are of unlike woods, and move apart over the year',
    explanation: `
Boards get wider as the air gets damper, and each wood by another share. The sides are as far apart as the blocking is wide; where the
bottom is of another wood, the play between them changes over the year:

    play then = play as built + movement of the blocking - movement of the bottom
    movement  = width x coefficient of the wood x change of its moisture content (in percent)

Poplar blocking of 3 1/2" goes up at 8.1% and dries to 5.4%: it gets narrower by 3.5 x 0.00289 x 2.7 = 0.027 inches,
nearly 1/32". A bottom of fiberboard gets narrower by a quarter of that at most, and jams; in the damp season it has more play than
it may. Where both are of one wood the movement cancels. Use one wood for both, or leave more play and let a rabbet hide it.

It is looked at where the room or the house says its \`seasons\`. Without \`goes-up-at\` the boards are taken to go up half way between.`,
    wrong,
    right: changed(wrong, 'stock board-4; gap', 'stock poplar-1x4; gap'),
    basis: 'Movement: USDA FPL, Wood Handbook FPL-GTR-190 (2010), Eq. 13-2 and Table 13-5, some of its rows from memory; moisture: FPL-GTR-282 (2021), Eq. 4-5; fiberboard: ANSI A208.2, its greatest expansion, read second-hand.',
    check: {
        room({ layout: { ceiling }, job }, report) {
            const year = ceiling && yearOf(ceiling.room);
            if (!ceiling || !year) return;
            const size = sizesOf(job);
            for (const { lines, section: { profile: { bottom } }, inside, bottom: stock, alike, play } of movingOf(ceiling, year)) {
                if (alike || !play || !bottom?.stock || play.built < 0) continue;
                const least = Math.min(play.driest, play.dampest), most = Math.max(play.driest, play.dampest), { gap } = bottom;
                const jams = least < 0, shows = most > gap.value.most;
                if (!jams && !shows) continue;
                const when = (is: number): string => (is === play.driest ? 'in the driest season' : 'in the dampest');
                const what = [
                    ...jams ? [`it jams ${when(least)}: up to ${size.most(-least)} too wide`] : [],
                    ...shows ? [`its play is up to ${size.most(most)} ${when(most)}, more than the ${size.fine(gap.value.most)} allowed`] : [],
                ];
                report({
                    ...wordsOf(bottom.stock),
                    message: `The bottom of ${linesNamed(lines.map(({ name }) => name))} is ${woodOf(stock.species?.value)}, and between the sides there is ${woodOf(inside.species?.value)}: from ${percentOf(year.driest)} to ${percentOf(year.dampest)} moisture ${what.join('; ')}. `
                        + `Use one wood for both, or leave ${size.most(play.built + Math.max(0, -least))} of play.`,
                });
            }
        },
    },
});

function woodOf(species: string | undefined): string {
    return species === 'mdf' ? 'fiberboard' : species!.replaceAll('-', ' ');
}
