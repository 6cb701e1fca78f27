import type { Ceiling } from '../ceiling/model.ts';
import type { Fix } from '../findings/finding.ts';
import type { JobSettings } from '../job/model.ts';
import { capitalized, counted } from '../plain/words.ts';
import { tapeOf } from '../job/tape.ts';
import { printLength, printMark } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { crowdedSpacers, mostOfSpacer, shortenedSpacers, type SurveyedSpacer } from '../survey/spacers.ts';
import { surveyedOf } from '../survey/survey.ts';
import { shortenedWords, surveyWords } from '../survey/words.ts';
import { defineRule } from './rule.ts';
import { changed, surveyedHall } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { nameOf } from './support/fit-words.ts';

const wrong = changed(surveyedHall('14"'), '  cleats {', `  spacers {
    stock   poplar-1x4
    height  3 1/2"
  }
  cleats {`);

const MOST_TOLD = 3;

export const humpEatsSpacerRoom = defineRule({
    name: 'hump-eats-spacer-room',
    severity: 'error',
    title: 'Where the ceiling hangs low, blocking leaves a spacer too little room above the cleats',
    explanation: `
Blocking lies against the ceiling and follows it; sides, cleats and bottom follow the plane. Where the ceiling hangs below the
plane, the room between blocking and cleats is less by that hump:

    room there = spacer room - hump

The hall's beams have a spacer room of 3 1/2": the sides of 5 1/2" are held down 1/4", and bottom, cleat and blocking take
3/4" each. Where the ceiling hangs 3/16" below the plane, 3 5/16" are left, and spacers of 3 1/2" run into the cleats. Cut
those spacers as short as is said, which their line of the cut list says too, or all of them as short as the lowest needs:
they are hidden, and one stop of the saw makes them all.`,
    wrong,
    right: changed(wrong, 'height  3 1/2"', 'height  3 1/4"'),
    basis: 'Geometry of the section; linear interpolation between the readings.',
    check: {
        fit({ layout: { ceiling }, takeOff, job }, report) {
            const surveyed = surveyedOf(ceiling, takeOff);
            if (!surveyed) return;
            // one that is too high everywhere is told by spacer-hits-cleat
            const crowded = crowdedSpacers(surveyed.spacers).sort((a, b) => a.room - a.hump - a.height - (b.room - b.hump - b.height));
            const [first, ...rest] = crowded;
            if (!first) return;
            const { deep } = surveyWords(job), { piece, height, hump } = first;
            const most = mostOfSpacer(first, job.cutTo.value), short = printMark(most, tapeOf(job));
            const others = shortenedSpacers(rest, job.cutTo.value), more = others.length > MOST_TOLD ? '; and so on, in the cut list' : '';
            const told = shortenedWords(others.slice(0, MOST_TOLD), tapeOf(job)).join('; ') + more;
            report({
                at: surveyed.said.at,
                message: `${capitalized(nameOf(piece))} is ${printLength(height, job.show.value)} high and has ${short} above the cleats: the ceiling hangs ${deep(hump)} below the plane there, and the blocking with it. `
                    + `Cut it to ${short} or less.${rest.length > 0 ? ` ${counted(rest.length, 'other spacer')} also: ${told}. `
                        + `Or cut all of them to ${short}.` : ''}`,
                related: [{ at: piece.source, message: 'the spacers are said here' }],
                fixes: most > 0 ? fixesFor(ceiling, first, most, job) : [],
            });
        },
    },
});

/** All spacers of that detail as low as the one with the least room. */
function fixesFor({ lines }: Ceiling, { piece }: SurveyedSpacer, most: Ticks, job: JobSettings): Fix[] {
    const height = lines.find(({ name }) => name === piece.line)?.section.profile.spacers?.height;
    return height ? replacing(height, spelledLike(height.value, most, job), `Cut all spacers to ${printMark(most, tapeOf(job))}`) : [];
}
