import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';

export const tooManyCoffers = defineRule({
    name: 'too-many-coffers',
    severity: 'error',
    title: 'More coffers than any ceiling has',
    explanation: `
A number of coffers that no ceiling has is taken for a slip of the finger, and is not laid out.

\`coffers-north 3000000\` where 3 was meant would be three million coffers along one wall.`,
    wrong: changed(HALL, 'coffers-north  3', 'coffers-north  3000000'),
    right: HALL,
    basis: 'A limit of the program.',
    check: {
        room({ layout }, report) {
            for (const { within, count, most, at } of troublesOf(layout, 'too-many-coffers')) {
                report({ at, message: `${count} coffers in ${within} are not laid out; ${most} is the limit.` });
            }
        },
    },
});
