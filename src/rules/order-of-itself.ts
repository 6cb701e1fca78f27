import { counted, listed } from '../plain/words.ts';
import { emptyOrders, namesOf } from '../putup/said.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { wordsOf } from './support/places.ts';

const wrong = changed(HALL, '\n  grid {', '\n  put-up {\n    order bottoms before bottoms\n  }\n\n  grid {');

export const orderOfItself = defineRule({
    name: 'order-of-itself',
    severity: 'warning',
    title: 'An order puts something before what is a part of it',
    explanation: `
An order is between two things, and what stands in both of them is left out of it: \`order line-A before bottoms\` puts the other pieces
of line A before the bottoms of the other lines. Where all of one thing is in the other, as in \`order bottoms before bottoms\` or
\`order bottom-A-1 before bottoms\`, nothing is left on one side: no piece waits for another, and all goes up as if the line were not there.

To have one piece go up before the others of its part, name the others: \`order bottom-A-1 before bottom-A-2\`.`,
    wrong,
    right: changed(wrong, 'order bottoms before bottoms', 'order sides before bottoms'),
    basis: 'The cut list of the room.',
    check: {
        room({ layout: { ceiling }, pieces }, report) {
            if (!ceiling?.room.putUp || ceiling.room.putUp.orders.length === 0) return;
            for (const { at, all, pieces: count } of emptyOrders(ceiling, namesOf(pieces()))) report({
                ...wordsOf(at), message: `This orders nothing: what is named on both sides is left out, and that is all of ${listed(all.map(({ value }) => value))} (${counted(count, 'piece')}). `
                    + 'Name two things that have no piece in common, or take the line away.',
            });
        },
    },
});
