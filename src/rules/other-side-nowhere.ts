import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';

const wrong = changed(changed(HALL, 'sides { stock poplar-1x6 }', `sides { stock poplar-1x6 }
  other-side { nails 18 ga x 2" every 6" }`), '\n  grid {', '\n  line A { other-side west }\n\n  grid {');

export const otherSideNowhere = defineRule({
    name: 'other-side-nowhere',
    severity: 'error',
    title: 'There is no such flank for the other side of a beam',
    explanation: `
A beam with an \`other-side\` has that on one of its flanks, and \`sides\` on the other. A line that runs north-south has a west and
an east flank, one that runs east-west a north and a south one. At 45 degrees, falling lines have the first and rising ones the second.

Line A runs east-west: \`line A { other-side west }\` names neither of its flanks. Of a line that says nothing the flank to the east or south
has the other side. A beam whose flanks are alike has none to place, and half of it along a wall none to show.`,
    wrong,
    right: changed(wrong, '{ other-side west }', '{ other-side north }'),
    basis: 'Names of the program.',
    check: {
        room({ layout }, report) {
            for (const trouble of troublesOf(layout, 'no-other-side')) {
                if (trouble.of === 'half-beam') {
                    report({ at: trouble.at, message: 'Both flanks of the beam that this is half of are alike, so there is no other side to show. Take it out, or give its profile an `other-side`.' });
                    continue;
                }
                const { line, runs, has, said, at } = trouble;
                report({
                    at,
                    message: has ? `Line ${line} runs ${runs} and has no ${said} flank. Its other side is on its ${has[0]} or its ${has[1]}.`
                        : `Both flanks of line ${line} are alike, so there is no other side to put on its ${said}. Take it out, or give its profile an \`other-side\`.`,
                });
            }
        },
    },
});
