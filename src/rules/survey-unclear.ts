import type { SurveyPoint } from '../job/survey.ts';
import { atKey } from '../plain/at-key.ts';
import { counted } from '../plain/words.ts';
import { soundReadings } from '../survey/readings.ts';
import { defineRule } from './rule.ts';
import { changed, surveyedHall } from './support/examples.ts';
import { sizesOf, type Sizes } from './support/words.ts';

const wrong = changed(surveyedHall('14"'), `12' 10", 9' 5" up`, `12' 10", 119" up`);

export const surveyUnclear = defineRule({
    name: 'survey-unclear',
    severity: 'error',
    title: 'Readings of the ceiling contradict each other, lie outside of the room, or show no surface',
    explanation: `
A reading of the ceiling has a place, east and south of the north-west corner. One that lies outside of the room was measured
from another corner, or has a slip in a figure; of two readings at one place at most one is right. Only the first reading at
each place inside of the room is used.

The hall is 9' 5" along its east wall. A reading at 12' 10", 119" lies 6" beyond the south wall.

Three readings make a surface, if they do not stand in one row. With fewer nothing follows from the survey; that is a
**warning**.`,
    wrong,
    right: surveyedHall('14"'),
    basis: 'Geometry of the room. A reading up to 1" outside of a wall counts as one at the wall, in a room of more than four walls one up to 1/8": common practice, no source.',
    check: {
        room({ layout: { room, ceiling }, job }, report) {
            if (!room.survey || !ceiling) return;
            const size = sizesOf(job);
            const { troubles } = soundReadings(ceiling, room.survey), rest = new Map<string, SurveyPoint[]>();
            for (const trouble of troubles) {
                if (trouble.kind === 'no-surface') {
                    if (!room.survey.lacks) report({ at: room.survey.at, severity: 'warning', message: `${counted(trouble.places, 'reading')}${trouble.places > 2 ? ' in one row make' : ' can make'} no surface: nothing follows from this survey. Read three places at least, not in one row.` });
                    continue;
                }
                const { point } = trouble, { at, inFile } = point;
                const more = inFile && atKey(rest, trouble.kind, () => []), message = trouble.kind === 'outside' ? outsideWords(point, ceiling, size) : readTwice(trouble, size);
                more?.push(point);
                if (more && more.length > MOST_TOLD) continue;
                report({
                    at, message: inFile ? `Row ${inFile.row} of \`${inFile.name}\`: ${message[0]!.toLowerCase()}${message.slice(1)}` : message,
                    ...trouble.kind === 'read-twice' && { related: [{ at: trouble.before.at, message: `${rowOf(trouble.before)}the first reading here is ${size(trouble.before.up)}` }] },
                });
            }
            for (const [kind, points] of rest) {
                const more = points.slice(MOST_TOLD), [first] = more;
                if (first) report({ at: first.at, message: `Rows of \`${first.inFile!.name}\` that ${kind === 'outside' ? 'lie outside of the room too' : 'read a place again too'}: ${more.length}, the first of them row ${first.inFile!.row}.` });
            }
        },
    },
});

/** Rows of a file that are told one by one: where the corner or the unit is wrong all of them are. */
const MOST_TOLD = 3;

function rowOf({ inFile }: SurveyPoint): string {
    return inFile ? `row ${inFile.row}: ` : '';
}

function readTwice({ point, before }: { readonly point: SurveyPoint; readonly before: SurveyPoint }, size: (ticks: number) => string): string {
    const were = before.inFile ? ` in row ${before.inFile.row}` : '';
    return `This place was read before${were}: ${size(before.up)} and now ${size(point.up)}, ${size(Math.abs(point.up - before.up))} apart. Read it again and keep one of the ${point.inFile ? 'rows' : 'lines'}.`;
}

function outsideWords({ x, y }: SurveyPoint, { width, length }: { readonly width: number; readonly length: number }, size: Sizes): string {
    const [way, by] = ([['east', x - width], ['south', y - length], ['west', -x], ['north', -y]] as const).reduce((most, one) => (one[1] > most[1] ? one : most));
    return by > 0 ? `This reading lies ${size.off(by)} beyond the ${way} wall: the room is ${size(width)} along the north wall and ${size(length)} along the east wall. From which corner was it measured, and which way first?`
        : `This reading lies outside of the walls: ${size.off(x)} east and ${size.off(y)} south of the corner there is no room. From which corner was it measured?`;
}
