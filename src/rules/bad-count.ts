import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';
import { shortest } from '../quantity/print-length.ts';

export const badCount = defineRule({
    name: 'bad-count',
    severity: 'error',
    title: 'A count that is not a whole number from 1 up',
    explanation: `
Coffers are counted in whole numbers, and there is at least one. \`coffers-north 2.5\` cannot be laid out; 1 means that no
beam crosses that wall.`,
    wrong: changed(HALL, 'coffers-north  3', 'coffers-north  2.5'),
    right: HALL,
    basis: 'Arithmetic.',
    check: {
        room({ layout }, report) {
            for (const { value, at, what } of troublesOf(layout, 'bad-count')) {
                report({ at, message: `There cannot be ${shortest(value, 4)} ${what}: write a whole number, 1 or more.` });
            }
        },
    },
});
