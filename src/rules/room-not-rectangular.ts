import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL, '  wall east   9\' 5"\n', '  wall east   9\' 5"\n  wall west   9\' 5 3/4"\n');

export const roomNotRectangular = defineRule({
    name: 'room-not-rectangular',
    severity: 'error',
    title: 'Opposite walls differ: only rectangular rooms are computed yet',
    explanation: `
Opposite walls of a rectangle are equally long. Where they are not, the room tapers, and every length in the taper changes;
that is not computed yet, so nothing is cut for such a room.

A west wall of 9' 5 3/4" against an east wall of 9' 5" is 3/4" out. Measure again; if the room does taper, lay it out on the
shorter of the two and put the rest into the band by hand.

A diagonal that was measured tells whether the corners are square: with walls of 12' and 9' it is 15'. One of 15' 1/2" says
that they are not, and nothing is cut for the room. What a tape across a room cannot tell, 1/16", is let pass.`,
    wrong,
    right: changed(wrong, '9\' 5 3/4"', '9\' 5"'),
    basis: 'Geometry.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job);
            for (const { walls, a, b, at, other } of troublesOf(layout, 'not-rectangular')) {
                report({
                    at,
                    message: `The ${walls[0]} wall is ${size(a)} and the ${walls[1]} wall ${size(b)}, ${size(Math.abs(a - b))} out: only rectangular rooms are computed yet. `
                        + 'Measure again, or give both walls the same length.',
                    related: [{ at: other, message: `the ${walls[0]} wall is ${size(a)}` }],
                });
            }
            for (const { measured, square, at } of troublesOf(layout, 'out-of-square')) {
                report({
                    at,
                    message: `The diagonal measures ${size(measured)}; with these walls and square corners it is ${size(square)}, ${size(Math.abs(measured - square))} ${measured > square ? 'less' : 'more'}: `
                        + 'only rectangular rooms are computed yet. Measure again.',
                });
            }
        },
    },
});
