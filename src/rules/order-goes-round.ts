import { counted, listed } from '../plain/words.ts';
import { putUpOf } from '../putup/put-up.ts';
import { WHY } from '../putup/why-words.ts';
import { spokenName } from '../takeoff/ids.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';

const wrong = changed(HALL, '\n  grid {', '\n  put-up {\n    order bottoms before cleats\n  }\n\n  grid {');

export const orderGoesRound = defineRule({
    name: 'order-goes-round',
    severity: 'error',
    title: 'The order of putting up asks for what cannot be',
    explanation: `
Some things have to be there before others: a side before the cleat that is nailed to it, the cleats before the bottom that is pressed
against them, what hides inside a beam before what closes it. An order that wants the bottoms before the cleats leaves none of the 2 that
can be the first: a cleat waits for the bottom, and the bottom for the cleat.

The message names the pieces, each with why it waits for the one before. Turn the order around, or take its line away: what is not
written goes up as it usually does.`,
    wrong,
    right: changed(wrong, 'order bottoms before cleats', 'order cleats before bottoms'),
    basis: 'What carries what: common practice, no source. What would be in the way of what: worked out on the solids of the dry fit.',
    check: {
        fit({ layout: { ceiling } }, report) {
            if (!ceiling.room.putUp || ceiling.room.putUp.orders.length === 0) return;
            const { cycle, stuck } = putUpOf(ceiling), said = cycle?.find(({ at }) => at);
            if (!cycle || !said) return;
            const waits = cycle.map(({ first, then, why }) => `${spokenName(then)} waits for ${spokenName(first)}, since it ${WHY[why]}`);
            report({ at: said.at!, message: `With this order nothing can be the first: ${listed(waits)}. Left with them: ${counted(stuck.length, 'piece')}.` });
        },
    },
});
