import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL, '  wall east   9\' 5"\n', '  wall east   9\' 5"\n  wall west   9\' 5 3/4"\n');

export const roomNotRectangular = defineRule({
    name: 'room-not-rectangular',
    severity: 'error',
    title: 'A room out of square that is not measured enough',
    explanation: `
Opposite walls of a rectangle are equally long. Where they are not, the room tapers, and every length in the taper changes; four walls
alone do not say how. Four walls and a diagonal do.

A west wall of 9' 5 3/4" against an east wall of 9' 5" is 3/4" out. Measure again; if the room does taper, measure one diagonal: the
room is then laid out as it is.

A diagonal that was measured tells whether the corners are square: with walls of 12' and 9' it is 15'. One of 15' 1/2" says that they
are not; then all four walls are to be measured, and not only two. What a tape across a room cannot show, 1/16", is accepted.`,
    wrong,
    right: changed(wrong, '9\' 5 3/4"', '9\' 5"'),
    basis: 'Geometry.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job);
            for (const { walls, a, b, at, other } of troublesOf(layout, 'not-rectangular')) {
                report({
                    at,
                    message: `The ${walls[0]} wall is ${size(a)} and the ${walls[1]} wall ${size(b)}, ${size(Math.abs(a - b))} out. `
                        + 'Measure again; or add a diagonal, and the room is laid out as it is: diagonal north-west to south-east measures ...',
                    related: [{ at: other, message: `the ${walls[0]} wall is ${size(a)}` }],
                });
            }
            for (const { measured, square, at } of troublesOf(layout, 'out-of-square')) {
                report({
                    at,
                    message: `The diagonal measures ${size(measured)}; with these walls and square corners it would be ${size(square)}, ${size(Math.abs(measured - square))} ${measured > square ? 'less' : 'more'}: `
                        + 'the room is out of square. Measure again, and all four walls.',
                });
            }
        },
    },
});
