import { listed } from '../plain/words.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL, `  wall north  12' 10"
  wall east   9' 5"
`, `  wall north  12' 10"
  wall east
  wall hall   12' 10"
  wall west
`);

export const wallsMakeNoRoom = defineRule({
    name: 'walls-make-no-room',
    severity: 'error',
    title: 'The walls do not make a room',
    explanation: `
The walls of a room stand in the order of a tape that goes around it clockwise, as it is seen on the plan, with the room on the right.
Where one crosses another, where they go around the wrong way, or where too many have no length, they are the walls of no room.

A wall that cannot be measured is written without a length and is worked out from the others: one, or two that run different ways. In the
hall two walls of 12' 10" lie across from each other, and nothing says how far apart, since neither the east nor the west wall has a
length.`,
    wrong,
    right: changed(wrong, 'wall east\n', 'wall east   9\' 5"\n'),
    basis: 'Geometry.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job);
            for (const { why, walls, at } of troublesOf(layout, 'no-room')) report({ at, message: words(why, walls) });
            for (const { from, to, measured, walls: [a, b], a: one, b: other, at } of troublesOf(layout, 'no-such-triangle')) {
                report({
                    at, message: `No diagonal from ${from} to ${to} is ${size(measured)} between a wall ${a} of ${size(one)} and a wall ${b} of ${size(other)}: `
                        + `it has to be more than ${size(Math.abs(one - other))} and less than ${size(one + other)}. Measure again.`,
                });
            }
        },
    },
});

function words(why: 'too-few-lengths' | 'runs-backwards' | 'crosses-itself' | 'counterclockwise', walls: readonly string[]): string {
    switch (why) {
        case 'too-few-lengths': return `The walls ${listed(walls)} have no length: one can be found from the others, or two that run different ways. Measure ${walls.length > 2 ? 'all but one' : 'one of them'}.`;
        case 'runs-backwards': return `Between the other walls wall ${walls[0]} would have to run the other way. Check the headings: walls go around the room clockwise, with the room on the right.`;
        case 'crosses-itself': return `Walls ${listed(walls)} run into each other. Check the headings and the order: walls go around the room clockwise, each from where the one before it ends.`;
        case 'counterclockwise': return 'These walls go around the room the wrong way: a tape goes clockwise, as it is seen on the plan, with the room on the right. Turn their order round.';
    }
}
