import type { Run } from '../ceiling/model.ts';
import { inches } from '../quantity/rational.ts';
import { roundTo } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
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

Three coffers in 144 1/8" are 48.042" each. Cut to eighths at 48" they leave 1/8" over, and one outer coffer is cut 1/8" wider than the
others. Cut to sixteenths they differ by 1/16". Up to 1/16" is nothing that anybody would see; more is a
**warning**. Where the coffers are of several sizes by intent, as round a lamp, a step more is not seen.
What is short by less than a step of the tape is accepted: nobody can cut it. Too much is never accepted: a run that is longer than
the room does not go in, so the outer coffers are cut smaller by it, and with \`residue band\` all of them are.`,
    wrong,
    right: changed(wrong, 'cut-to 1/8"', 'cut-to 1/16"'),
    basis: 'Coffers equal within 1/16": common practice, no source.',
    check: {
        room({ layout: { ceiling, room }, job }, report) {
            const grid = room.grid;
            for (const run of ceiling && grid ? [ceiling.across, ceiling.down] : []) {
                const { ticks, place, cutCoffers } = run.residue;
                if (grid && place === 'band' && !ceiling?.band && run.residue.rest >= job.cutTo.value) {
                    report({
                        ...wordsOf(grid.residue), severity: 'error',
                        message: `${sizesOf(job).fine(run.residue.rest)} is left for the band ${alongWall(run.along)}, and no band runs around this room: the beams end short of the wall. Write \`residue outer-coffers\`, or add a band.`,
                        fixes: replacing(grid.residue, 'outer-coffers', 'Let the outer coffers take it'),
                    });
                    continue;
                }
                const said = spacingSaidBy(run.spacing), isEqual = spreadOf(run.coffers) <= 1;
                if (!grid || !said || !isEqual || spreadOf(cutCoffers) <= COFFERS_DIFFER || run.spacing.by === 'lines') continue;
                if (ticks >= 0 && ticks < job.cutTo.value) continue;
                const size = sizesOf(job), titled = 'Let the band take it';
                report({
                    ...wordsOf(said),
                    message: `${counted(cutCoffers.length, 'coffer')} cut at ${size(nearestOf(run, job.cutTo.value))} leave ${size.fine(Math.abs(ticks))} ${ticks > 0 ? 'over' : 'too little'} ${alongWall(run.along)}. `
                        + `${placedIn(run, size)} Change that with \`residue\`, or use a finer \`cut-to\`.`,
                    fixes: place === 'band' || !ceiling?.band ? [] : grid.residue.said ? replacing(grid.residue, 'band', titled) : adding(grid, 'residue band', titled),
                });
            }
        },
    },
});

/** What equal coffers are cut to before the outer ones take what is left. */
function nearestOf({ residue: { place, cutCoffers }, coffers }: Run, step: Ticks): Ticks {
    return place === 'outer-coffers' ? roundTo(coffers[0] ?? 0, step) : cutCoffers[0] ?? 0;
}

/** From the least to the greatest. */
function spreadOf(lengths: readonly number[]): number {
    return Math.max(...lengths) - Math.min(...lengths);
}

function placedIn({ residue: { place, cutCoffers, rest } }: Run, size: ReturnType<typeof sizesOf>): string {
    switch (place) {
        case 'outer-coffers': return `The outer coffers take it: they are cut at ${size(cutCoffers[0] ?? 0)}${cutCoffers.at(-1) === cutCoffers[0] ? '' : ` and ${size(cutCoffers.at(-1) ?? 0)}`}.`;
        case 'band': return `The band takes ${size.fine(Math.abs(rest))}.`;
        case 'spread': return 'It is spread over the coffers, which differ by a step.';
    }
}
