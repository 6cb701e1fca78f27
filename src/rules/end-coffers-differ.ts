import { lowReach } from '../ceiling/flanks.ts';
import type { Ceiling, Line, Run } from '../ceiling/model.ts';
import type { Fix } from '../findings/finding.ts';
import type { Fixture, JobSettings, Spacing } from '../job/model.ts';
import type { Given } from '../provenance/source.ts';
import { inches } from '../quantity/rational.ts';
import { roundTo } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule, type Report } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { replacing, spelled } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { alongWall, sizesOf } from './support/words.ts';

/** Coffers that differ by no more than this pass as equal. */
const PASSES = inches('1/16');

const wrong = changed(changed(HALL, 'coffers-north  3', 'lines-north    52 1/2", 105", 157 1/2"'), '12\' 10"', '17\' 6"');

export const endCoffersDiffer = defineRule({
    name: 'end-coffers-differ',
    severity: 'hint',
    title: 'The outer coffers come out at another size than is likely meant',
    explanation: `
Dividing the wall into equal parts and putting a line on each mark does not make equal coffers: an outer coffer ends at the
band or the wall, where there is no half of a beam. It is the clear lengths between the faces that have to be equal.

Three lines of 7" at 55", 110" and 165" in 220", inside a band of 3/4", leave 50 3/4" outside and 48" inside: the outer coffers
are 2 3/4" wider. \`coffers-north 4\` makes all of them 49 3/8". Lines at other places are taken as they are meant.

Where a coffer is centered on a feature (\`centered-on\`) the outer coffers take the shift. With the lamp in the middle of the
room and an even number of coffers, a beam would run under the lamp; so the whole grid moves by half a coffer, and one outer coffer
is left far wider than the other. Where they differ by more than half of a coffer and its beam, one coffer more or less makes
them more alike, and that is a **warning**.`,
    wrong,
    right: changed(wrong, '52 1/2", 105", 157 1/2"', '51 1/4", 105", 158 3/4"'),
    basis: 'Arithmetic; coffers equal within 1/16": common practice, no source.',
    check: {
        room({ layout: { ceiling }, job }, report) {
            if (!ceiling) return;
            const { centeredOn } = ceiling.room.grid;
            for (const run of [ceiling.across, ceiling.down]) {
                const { spacing, coffers } = run, [outer, inner] = coffers as [Ticks, Ticks?], size = sizesOf(job);
                if (centeredOn && spacing.by !== 'lines') checkShift(run, centeredOn, job, report);
                if (spacing.by !== 'lines' || inner === undefined || !dividesEvenly(run) || Math.abs(outer - coffers.at(-1)!) > PASSES || Math.abs(outer - inner) <= PASSES) continue;
                const equal = (run.end - run.start - run.lines.reduce((sum, line) => sum + line.high - line.low, 0)) / coffers.length;
                report({
                    ...wordsOf(spacing.centers[0]!),
                    message: `Outer coffers ${size(Math.abs(outer - inner))} ${outer > inner ? 'wider' : 'narrower'} ${alongWall(run.along)}: ${size(outer)} outside and ${size(inner)} inside. `
                        + `Equal coffers would be ${size(roundTo(Math.round(equal), job.cutTo.value))}.`,
                    fixes: moveLines(run, spacing, ceiling, job),
                });
            }
        },
    },
});

/** A shift of more than a quarter of a coffer and its beam makes the outer two differ by more than half: another number is nearer. */
function checkShift(run: Run, feature: Given<Fixture>, job: JobSettings, report: Report): void {
    const { cutCoffers } = run.residue, [first, last] = [cutCoffers[0]!, cutCoffers.at(-1)!];
    if (2 * Math.abs(first - last) <= (run.end - run.start) / run.coffers.length) return;
    const size = sizesOf(job);
    const back = run.along === 'east-west' ? ['west', 'east'] : ['north', 'south'];
    report({
        ...wordsOf(feature),
        severity: 'warning',
        message: `Centered on ${feature.value.name}, the outer coffers ${alongWall(run.along)} are ${size(first)} and ${size(last)}. `
            + `One coffer more or less makes them more alike, or moving ${feature.value.name} ${size(roundTo(Math.round(Math.abs(first - last) / 2), job.cutTo.value))} farther ${back[first > last ? 0 : 1]}.`,
    });
}

const centerOf = (line: Line): number => line.low + lowReach(line);

/** Whether the centers divide the run into equal parts, from wall to wall or from band to band. */
function dividesEvenly({ lines, start, end }: Run): boolean {
    return [0, start].some(from => {
        const step = (end + start - 2 * from) / (lines.length + 1);
        return lines.every((line, i) => Math.abs(centerOf(line) - from - (i + 1) * step) <= PASSES);
    });
}

/** Every center moved to where it makes the coffers equal, to the resolution of the tape. */
function moveLines(run: Run, spacing: Extract<Spacing, { by: 'lines' }>, ceiling: Ceiling, job: JobSettings): Fix[] {
    const wall = run.along === 'east-west' ? ceiling.width : ceiling.length;
    const fromFar = spacing.from.value.includes(run.along === 'east-west' ? 'east' : 'south');
    const clear = run.end - run.start - run.lines.reduce((sum, line) => sum + line.high - line.low, 0);
    let before = 0;
    const edits = run.lines.map((line, i) => {
        const width = line.high - line.low;
        const center = run.start + clear * (i + 1) / run.coffers.length + before + width / 2;
        before += width;
        const from = (position: Ticks): Ticks => fromFar ? wall - position : position;
        const given = spacing.centers.find(one => Math.abs(one.value - from(centerOf(line))) <= 1);
        return replacing(given, spelled(roundTo(Math.round(from(center)), job.cutTo.value), job), '').at(0)?.edits[0];
    });
    const all = edits.filter(edit => edit !== undefined);
    return all.length === run.lines.length ? [{ title: 'Move the lines so that the coffers are equal', edits: all, preferred: true }] : [];
}
