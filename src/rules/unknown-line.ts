import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';
import { linesNamed } from './support/words.ts';

const wrong = changed(HALL, '\n  grid {', '\n  line C { beams hall-box }\n\n  grid {');

export const unknownLine = defineRule({
    name: 'unknown-line',
    severity: 'error',
    title: 'The grid has no line of that name',
    explanation: `
Lines that run north-south are 1, 2, 3 ... from the west; lines that run east-west are A, B ... from the north. There is one
line less than there are coffers.

Three coffers by two have lines 1 and 2, and line A. \`line C\` names a line that is not there, so it changes nothing. A line of
your own can have any name, and says where it stands: \`line C { at 3' 6" from wall-north }\`.`,
    wrong,
    right: changed(wrong, 'line C', 'line A'),
    basis: 'Names of the program.',
    check: {
        room({ layout }, report) {
            for (const { name, has, at } of troublesOf(layout, 'unknown-line')) {
                report({ at, message: `There is no line ${name}. ${has.length ? `This grid has ${linesNamed(has)}.` : 'This grid has no lines.'} For a line of your own, write where it stands: \`at ... from ...\`.` });
            }
        },
    },
});
