import { closest, distance } from 'fastest-levenshtein';
import { namesOf, unknownNames } from '../putup/said.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { replacing } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';

const wrong = changed(HALL, '\n  grid {', '\n  put-up {\n    order bottum before trim\n  }\n\n  grid {');

export const orderNamesNothing = defineRule({
    name: 'order-names-nothing',
    severity: 'error',
    title: 'The order of putting up names what is not in the room',
    explanation: `
What goes up is named by its part (\`blocking\`, \`spacers\`, \`sides\`, \`cleats\`, \`bottoms\`, \`timbers\`, \`moldings\`,
\`band\`, \`trim\`), by its line or its wall (\`line-B\`, \`wall-north\`), or by its name in the cut list (\`bottom-B-3\`); the
first bay is the number of a coffer on the plan. The same names say what is \`up\` by now. A name that nothing in the room has, such as
coffer 7 of 6, would be passed over, and the order would not be the one that you wrote.`,
    wrong,
    right: changed(wrong, 'bottum', 'bottoms'),
    basis: 'The cut list and the plan of the room.',
    check: {
        room({ layout: { ceiling }, pieces }, report) {
            const said = ceiling?.room.putUp;
            if (!ceiling || !said) return;
            if (said.firstBay && (said.firstBay.value < 1 || said.firstBay.value > ceiling.coffers.length)) {
                const { value } = said.firstBay, count = ceiling.coffers.length;
                report({ ...wordsOf(said.firstBay), message: `There is no coffer ${value}: the room has ${count === 1 ? 'one' : `1 to ${count}`}.` });
            }
            const names = namesOf(pieces());
            for (const given of unknownNames(ceiling, names)) {
                const meant = closest(given.value, [...names.keys()]), near = distance(given.value, meant) <= 2 ? meant : undefined;
                report({
                    ...wordsOf(given), message: `Nothing in this room is called ${given.value}${near === undefined ? '. Name a part, such as bottoms, a line, such as line-A, or a piece of the cut list' : `. Did you mean ${near}?`}`,
                    fixes: near === undefined ? [] : replacing(given, near, `Change it to ${near}`),
                });
            }
        },
    },
});
