import { joistsOf } from '../ceiling/joists.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const ceiling = `  ceiling {
    height  8' 6"
    joists  2x8 every 16" running east-west first-center 8 1/2" from north
    joist   13' found doubled
  }
`;
const wrong = changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"\n${ceiling}`);

export const joistNotThere = defineRule({
    name: 'joist-not-there',
    severity: 'error',
    title: 'A joist that was found lies outside of the room, or none of the row is near it',
    explanation: `
\`joist\` says how what was found differs from the row: it is measured from the wall that the first joist is measured from, and is said of the
nearest joist of the row, half of their spacing away at most. What lies beyond the room, or where the row has none, was measured from
another wall, or is a slip; it is left out of what holds the blocking.

The hall is 9' 5" from north to south, and its joists are counted from the north: there is no joist at 13'. Before the first of the row,
or where two were found at one place, it is an \`extra\` one.`,
    wrong,
    right: changed(wrong, `joist   13' found`, `joist   4' 8 1/2" found`),
    basis: 'Geometry of the room.',
    check: {
        room({ layout: { ceiling }, job }, report) {
            if (!ceiling) return;
            const laid = joistsOf(ceiling);
            if (!laid) return;
            const { said: { first, from, every }, runs, all, astray } = laid, size = sizesOf(job);
            const across = runs === 'north-south' ? ceiling.width : ceiling.length, room = `the room is ${size(across)} from there to the other side`;
            if (all.length === 0 && astray.length === 0 && first!.value > across) {
                report({ ...wordsOf(first!), message: `The first joist would be ${size(first!.value)} from the ${from} wall, and ${room}: there is no joist over it. From which wall was it measured?` });
            }
            for (const { found, why } of astray) {
                report({
                    ...wordsOf(found),
                    message: why === 'outside' ? `There can be no joist ${size(found.value)} from the ${from} wall: ${room}. From which wall was it measured?`
                        : `No joist of the row is near ${size(found.value)} from the ${from} wall of which nothing was said yet: the first is at ${size(first!.value)}, and they are ${size(every.value)} apart. Write \`found extra\` for one that the row does not have.`,
                });
            }
        },
    },
});
