import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';

export const tooManyCoffers = defineRule({
    name: 'too-many-coffers',
    severity: 'error',
    title: 'More coffers than any ceiling has',
    explanation: `
A number of coffers that no ceiling has is taken for a slip of the finger, and is not laid out.

\`coffers-north 3000000\` where 3 was meant would be three million coffers along one wall.

All rooms of one file together are laid out up to 400 coffers and 4000 spacers, so that an answer comes at once.
A larger house is written in several files.`,
    wrong: changed(HALL, 'coffers-north  3', 'coffers-north  3000000'),
    right: HALL,
    basis: 'A limit of the program.',
    check: {
        room({ layout }, report) {
            for (const { within, count, most, at } of troublesOf(layout, 'too-many-coffers')) {
                report({ at, message: `${count} coffers in ${within} are not laid out; ${most} is the limit.` });
            }
            for (const { of, what, count, most, at } of troublesOf(layout, 'too-much-in-file')) {
                const whose = of === 'rooms' ? 'rooms of this file' : 'rooms that alternates of this file change';
                const instead = of === 'rooms' ? 'Split the file into files that use each other.' : 'Say some of the alternates in another file.';
                report({ at, message: `With this one, the ${whose} have ${count} ${what}, and ${most} is the limit: this room is not laid out. ${instead}` });
            }
        },
    },
});
