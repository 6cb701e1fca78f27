import { inches } from '../quantity/rational.ts';
import { roundTo } from '../quantity/round.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { adding, replacing } from './support/fixes.ts';
import { spacingSaidBy, wordsOf } from './support/places.ts';
import { alongWall, sizesOf } from './support/words.ts';
import { counted } from '../plain/words.ts';

/** More than this between two coffers is seen. */
export const COFFERS_DIFFER = inches('1/16');

const wrong = changed(changed(HALL, 'room hall', 'job "Long Row 8" { cut-to 1/8" }\n\nroom hall'), 'wall north  12\' 10"', 'wall north  12\' 10 1/8"');

export const roundingLeftOver = defineRule({
    name: 'rounding-left-over',
    severity: 'warning',
    title: 'Equal coffers, cut to the tape, come out unequal',
    explanation: `
Equal pieces are cut at one stop, so all of them are rounded alike, to \`cut-to\` (1/32" where nothing else is said). What that
leaves over in the run has to go somewhere: \`residue\` says whether the outer coffers take it, or the band, or whether the
coffers differ by a step (\`spread\`). Where it says \`band\` and no band runs around the room, nobody takes it: that is an **error**.

Three coffers in 144 1/8" are a third of 1/8" over 48" each. Cut to eighths at 48" they leave 1/8" over, and one outer coffer
is cut 1/8" wider than the others. Cut to sixteenths they differ by 1/16". Up to 1/16" is nothing that anybody would see; more is a
**warning**. Where the coffers are of several sizes by intent, as round a lamp, a step more is not seen.
What is short by less than a step of the tape is accepted: nobody can cut it. Too much is never accepted: a run that is longer than
the room does not go in, so the outer coffers are cut smaller by it, and with \`residue band\` all of them are.`,
    wrong,
    right: changed(wrong, 'cut-to 1/8"', 'cut-to 1/16"'),
    basis: 'Coffers equal within 1/16": common practice, no source.',
    check: {
        room({ layout: { ceiling }, job }, report) {
            if (!ceiling) return;
            const { grid } = ceiling.room, size = sizesOf(job);
            for (const run of [ceiling.across, ceiling.down]) {
                const { ticks, place, cutCoffers, rest } = run.residue;
                if (place === 'band' && !ceiling.band && rest >= job.cutTo.value) {
                    report({
                        ...wordsOf(grid.residue), severity: 'error',
                        message: `${size.fine(rest)} is left for the band ${alongWall(run.along)}, and no band runs around this room: the beams end short of the wall. Write \`residue outer-coffers\`, or add a band.`,
                        fixes: replacing(grid.residue, 'outer-coffers', 'Let the outer coffers take it'),
                    });
                }
                const isEqual = spreadOf(run.coffers) <= 1;
                // with a band all are cut alike, and spread they differ by a step
                if (place !== 'outer-coffers' || !isEqual || spreadOf(cutCoffers) <= COFFERS_DIFFER || run.spacing.by === 'lines') continue;
                const [first, last] = [cutCoffers[0]!, cutCoffers.at(-1)!], titled = 'Let the band take it';
                report({
                    ...wordsOf(spacingSaidBy(run.spacing)),
                    message: `${counted(cutCoffers.length, 'coffer')} cut at ${size(roundTo(run.coffers[0]!, job.cutTo.value))} leave ${size.fine(Math.abs(ticks))} ${ticks > 0 ? 'over' : 'too little'} ${alongWall(run.along)}. `
                        + `The outer coffers take it: they are cut at ${size(first)}${last === first ? '' : ` and ${size(last)}`}. Change that with \`residue\`, or use a finer \`cut-to\`.`,
                    fixes: !ceiling.band ? [] : grid.residue.said ? replacing(grid.residue, 'band', titled) : adding(grid, 'residue band', titled),
                });
            }
        },
    },
});

/** From the least to the greatest. */
function spreadOf(lengths: readonly number[]): number {
    return Math.max(...lengths) - Math.min(...lengths);
}
