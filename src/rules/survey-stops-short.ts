import { counted } from '../plain/words.ts';
import { surveyedOf } from '../survey/survey.ts';
import { sideNamed, surveyWords } from '../survey/words.ts';
import { defineRule } from './rule.ts';
import { changed, surveyedHall } from './support/examples.ts';

const wrong = changed(surveyedHall('14"'), `0', 9' 5" up`, `0', 2' up`);

export const surveyStopsShort = defineRule({
    name: 'survey-stops-short',
    severity: 'hint',
    title: 'The survey of the ceiling does not reach as far as the sides',
    explanation: `
Between its readings the ceiling is taken to be flat from one to the next. Beyond the outermost readings nothing is known of
it, and no gap, no depth to scribe and no lap is told there. A survey that reaches into every corner of the room, with a
reading at every crossing and every four feet along the beams, covers all sides.

In the hall one reading lies 2' down the west wall and not in its corner: about the south-west nothing is known.`,
    wrong,
    right: surveyedHall('14"'),
    basis: 'A reading at every crossing and every 4\' of beam: common practice, no source.',
    check: {
        fit({ layout: { ceiling }, takeOff, job }, report) {
            const surveyed = surveyedOf(ceiling, takeOff);
            if (!surveyed || surveyed.surface.triangles.length === 0) return;
            const lost = ({ unknown }: (typeof surveyed.sides)[number]): number => unknown.reduce((sum, { from, to }) => sum + to - from, 0);
            const short = surveyed.sides.filter(side => side.unknown.length > 0).sort((a, b) => lost(b) - lost(a)), [first, ...rest] = short;
            if (!first) return;
            const { over } = surveyWords(job), { under: { piece, length }, unknown } = first;
            report({
                at: surveyed.said.at,
                message: `Nothing is known of the ceiling over ${sideNamed(piece)} ${unknown.map(stretch => over(stretch, length)).join(' and ')}`
                    + `${rest.length > 0 ? `, nor all along ${counted(rest.length, 'other side')}` : ''}: the readings do not reach there. Read the corners of the room too.`,
            });
        },
    },
});
