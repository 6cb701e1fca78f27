import { counted } from '../plain/words.ts';
import { soundReadings } from '../survey/readings.ts';
import { defineRule } from './rule.ts';
import { changed, surveyedHall } from './support/examples.ts';
import { sizesOf } from './support/words.ts';

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
    basis: 'Geometry of the room. A reading up to 1" outside of a wall counts as one at the wall: common practice, no source.',
    check: {
        room({ layout: { room, ceiling }, job }, report) {
            if (!room.survey || !ceiling) return;
            const size = sizesOf(job);
            for (const trouble of soundReadings(ceiling, room.survey).troubles) {
                switch (trouble.kind) {
                    case 'no-surface': {
                        report({ at: room.survey.at, severity: 'warning', message: `${counted(trouble.places, 'reading')}${trouble.places > 2 ? ' in one row make' : ' can make'} no surface: nothing follows from this survey. Read three places at least, not in one row.` });
                        break;
                    }
                    case 'read-twice': {
                        const { point, before } = trouble;
                        report({
                            at: point.at, related: [{ at: before.at, message: `the first reading here is ${size(before.up)}` }],
                            message: `This place was read before: ${size(before.up)} and now ${size(point.up)}, ${size(Math.abs(point.up - before.up))} apart. Read it again and keep one of the lines.`,
                        });
                        break;
                    }
                    case 'outside': {
                        const { x, y, at } = trouble.point;
                        const [way, by] = ([['east', x - ceiling.width], ['south', y - ceiling.length]] as const).reduce((most, one) => (one[1] > most[1] ? one : most));
                        report({
                            at, message: by > 0 ? `This reading lies ${size(by)} beyond the ${way} wall: the room is ${size(ceiling.width)} along the north wall and ${size(ceiling.length)} along the east wall. From which corner was it measured, and which way first?`
                                : `This reading lies outside of the walls: ${size(x)} east and ${size(y)} south of the corner there is no room. From which corner was it measured?`,
                        });
                    }
                }
            }
        },
    },
});
