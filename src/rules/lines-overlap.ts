import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL, 'coffers-north  3', 'lines-north    50", 54"');

export const linesOverlap = defineRule({
    name: 'lines-overlap',
    severity: 'error',
    title: 'Two lines of beams lie over each other, or a line lies over the wall',
    explanation: `
Lines are placed by their centers, so two neighbors must be at least half of each beam's width apart, and the first and the
last that far from the band or the wall.

Lines of 5" with their centers at 50" and 54" overlap by 1". Put the second at 55" or further, and further still if there is
to be a coffer between them.`,
    wrong,
    right: changed(wrong, '50", 54"', '50 1/2", 103 1/2"'),
    basis: 'Arithmetic.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job);
            for (const { lines, by, at } of troublesOf(layout, 'lines-overlap')) {
                report({
                    at,
                    message: by > 0
                        ? `Lines ${lines[0]} and ${lines[1]} overlap by ${size(by)}. Move them at least that far apart.`
                        : `Lines ${lines[0]} and ${lines[1]} stand side by side and leave no coffer between them. Move them apart.`,
                });
            }
        },
    },
});
