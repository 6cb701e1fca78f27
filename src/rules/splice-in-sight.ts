import { centerOf } from '../ceiling/bays.ts';
import { crossingsOn } from '../ceiling/wall-splices.ts';
import type { Ceiling, Line, Tape } from '../ceiling/model.ts';
import type { Fix } from '../findings/finding.ts';
import type { JobSettings, Room } from '../job/model.ts';
import { sameSource, type Source } from '../provenance/source.ts';
import { roundTo } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { replacing, spelled } from './support/fixes.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL, '\n  grid {', '\n  line 1 { splice 42" }\n\n  grid {');

export const spliceInSight = defineRule({
    name: 'splice-in-sight',
    severity: 'warning',
    title: 'A splice stands out in a coffer instead of on a crossing',
    explanation: `
A splice of a bottom that runs through is best hidden on a crossing, where the bottoms that are cut between butt against it on
both sides. Out in a coffer it shows, and there is nothing over it but the bottom's own cleats.

A bottom 9' 5" long that is spliced at 42" from the north wall has the joint in the first coffer, 12" before line A. Put it on
the crossing, at 56 1/2". A band or a half beam along a wall is spliced behind a line that ends at it.`,
    wrong,
    right: changed(wrong, '42"', '56 1/2"'),
    basis: 'Common practice, no source.',
    check: {
        room({ layout: { ceiling, room }, job }, report) {
            if (!ceiling) return;
            const size = sizesOf(job);
            for (const wall of ceiling.walls) {
                const own = ceiling.around[wall.name], meeting = crossingsOn(wall, ceiling.lines), what = own?.kind === 'band' ? 'band' : 'half beam';
                for (const { at, said, tape } of own?.splices ?? []) {
                    const isHidden = meeting.some(({ at: center, line }) => Math.abs(center - at) * 2 <= line.high - line.low);
                    if (!said || !tape || meeting.length === 0 || isHidden) continue;
                    const { at: center, line: { name } } = [...meeting].sort((a, b) => Math.abs(a.at - at) - Math.abs(b.at - at))[0]!;
                    const figure = roundTo((center - Math.round(tape.at)) * tape.way, job.cutTo.value);
                    const given = room.wallSplices![wall.name]!.find(one => sameSource(one.at, said));
                    report({
                        at: said,
                        message: `The splice of the ${what} along the ${wall.name} wall falls in a coffer. Put it behind line ${name}, which hides it`
                            + `${figure > 0 ? `: at ${size(figure)} by this tape` : ''}.`,
                        fixes: figure > 0 ? replacing(given, spelled(figure, job), `Put the splice behind line ${name}`) : [],
                    });
                }
            }
            for (const line of ceiling.lines) {
                const crossing = crossingLines(ceiling, line);
                for (const { at, said, tape } of line.splices) {
                    if (!said || !tape || crossing.length === 0 || crossing.some(({ low, high }) => low <= at && at <= high)) continue;
                    const nearest = [...crossing].sort((a, b) => Math.abs(centerOf(a) - at) - Math.abs(centerOf(b) - at))[0]!;
                    const center = roundTo(centerOf(nearest), job.cutTo.value);
                    const from = line.runs === 'north-south' ? 'north' : 'west';
                    report({
                        at: said,
                        message: `The splice of line ${line.name} falls in a coffer, ${whereIs(at, crossing, ticks => size(roundTo(ticks, job.cutTo.value)))}. `
                            + `Put it on the crossing with line ${nearest.name}, at ${size(center)} from the ${from} wall.`,
                        fixes: moveTo(center, { said, tape, room, job }),
                    });
                }
            }
        },
    },
});


/** Those over which its bottom runs: one that is cut at a crossing cannot be spliced there. */
function crossingLines(ceiling: Ceiling, line: Line): readonly Line[] {
    return line.passes.filter(({ stem, relation, cuts }) => stem === null && relation === 'flush' && !cuts).map(({ of }) => ceiling.lines.find(({ name }) => name === of)!);
}

function whereIs(at: Ticks, crossing: readonly Line[], size: (ticks: Ticks) => string): string {
    const before = crossing.findLast(line => line.high < at);
    return before ? `${size(at - before.high)} past line ${before.name}` : `${size(crossing[0]!.low - at)} before line ${crossing[0]!.name}`;
}

/** By the tape that the splice was said with; a crossing that lies behind its hook is in no figure of it. */
function moveTo(center: Ticks, { said, tape, room, job }: { said: Source; tape: Tape; room: Room; job: JobSettings }): Fix[] {
    const given = room.lines.flatMap(spec => spec.splices).find(splice => sameSource(splice.at, said));
    const figure = roundTo((center - Math.round(tape.at)) * tape.way, job.cutTo.value);
    return figure > 0 ? replacing(given, spelled(figure, job), 'Put the splice on the crossing') : [];
}
