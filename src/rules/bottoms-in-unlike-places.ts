import type { WholeSection } from '../ceiling/model.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { meetings } from './support/meetings.ts';
import { linesNamed, sizesOf } from './support/words.ts';

const wrong = changed(changed(HALL, '\nroom hall', `
profile capped-box like hall-box {
  sides.rip 4 3/4"
  bottom { stock poplar-1x6; place under-sides overhang 1/4" }
}

room hall`), '\n  grid {', '\n  line A { beams capped-box }\n\n  grid {');

export const bottomsInUnlikePlaces = defineRule({
    name: 'bottoms-in-unlike-places',
    severity: 'error',
    title: 'A bottom under its sides meets one between its sides, at the same depth',
    explanation: `
Where two beams of one depth meet, the sides of one meet those of the other in a corner, and the bottom of one ends at the bottom of
the other. A bottom that lies under its sides cannot end there where the other beam's sides come down beside their bottom: it
runs into them, by the thickness of a side.

A beam of 5 1/2" sides held down 1/4" with its bottom between them, and one of 4 3/4" sides with a bottom of 3/4" under them, are both
5 3/4" deep: the first bottom runs 3/4" into the sides of the other. Put both bottoms in the same place, or make one beam 1/2" deeper or
more, so that the other dies into its side.`,
    wrong,
    right: changed(wrong, '  sides.rip 4 3/4"\n  bottom { stock poplar-1x6; place under-sides overhang 1/4" }', '  sides.held-down 1/4"'),
    basis: 'Sums of the section; a step of 1/2" between two depths: common practice, no source.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job), lies = ({ profile }: WholeSection): boolean => profile.bottom?.place.value === 'under-sides';
            for (const { line, others, at, via } of meetings(layout)) {
                const unlike = others.filter(other => lies(other.section) !== lies(line.section) && other.section.depth.ticks === line.section.depth.ticks);
                const [other] = unlike;
                if (!other) continue;
                const names = linesNamed(unlike.map(({ name }) => name)), mine = lies(line.section);
                const [under, beside] = mine ? [`line ${line.name}`, names] : [names, `line ${line.name}`];
                report({
                    at, via,
                    message: `The bottom of ${under} lies under its sides and would run ${size((mine ? other : line).section.sideThickness.ticks)} into the sides of ${beside}, `
                        + `which come down to the same ${size(line.section.depth.ticks)}. Put both bottoms in the same place, or make one of the beams deeper.`,
                    related: [line.section, other.section].flatMap(({ profile: { bottom } }) => bottom ? [{ at: bottom.place.said ? bottom.place.at : bottom.at, message: 'this bottom' }] : []),
                });
            }
        },
    },
});
