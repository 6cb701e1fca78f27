import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';
import { listed } from '../plain/words.ts';

const wrong = changed(HALL, '\n  grid {', '\n  line 1 { until C }\n\n  grid {');

export const unknownMeeting = defineRule({
    name: 'unknown-meeting',
    severity: 'error',
    title: 'A line begins, stops or crosses where nothing is',
    explanation: `
A line begins and stops at a wall or at another line: \`line 1 { from wall-north; until A }\`. It stands off a wall or a line:
\`line C { at 4' from wall-north }\`. A crossing is named by its two lines, \`crossing A1 { through 1 }\`, with a hyphen between longer
names: \`crossing stub-A\`. A splice is measured from an end of its line or from a line that this meets: \`splice 9' 2" from east\`.

Three coffers by two have lines 1, 2 and A; there is no line C that line 1 could stop at.`,
    wrong,
    right: changed(wrong, 'until C', 'until A'),
    basis: 'Names of the program.',
    check: {
        room({ layout }, report) {
            for (const { of, name, has, at } of troublesOf(layout, 'unknown-meeting')) {
                report({ at, message: `There is no ${name} for ${of}.${has.length > 0 ? ` Choose from ${listed(has.slice(0, MOST_NAMED))}${has.length > MOST_NAMED ? ', and others' : ''}.` : ''}` });
            }
        },
    },
});

/** So many names are read; more are not. */
const MOST_NAMED = 12;
