import { listed } from '../plain/words.ts';
import { compareSources, sameSource } from '../provenance/source.ts';
import { defineRule } from './rule.ts';
import { BEAM, changed, ENTRY_HALL } from './support/examples.ts';
import { wordsOf } from './support/places.ts';

const wrong = `${BEAM}
${changed(ENTRY_HALL, '\n  grid {', '\n  put-up {\n    after-room pantry\n  }\n\n  grid {')}
${changed(changed(ENTRY_HALL, 'room hall "Entry hall"', 'room pantry "Pantry"'), '\n  grid {', '\n  put-up {\n    after-room hall before trim\n  }\n\n  grid {')}`;

export const roomsWaitInACircle = defineRule({
    name: 'rooms-wait-in-a-circle',
    severity: 'error',
    title: 'Rooms wait for each other to be done, so that none of them ever is',
    explanation: `
\`after-room pantry\` in the hall has the pantry done before anything of the hall is begun, and \`after-room pantry before trim\`
before its trim. A room is done when all of it is up, filled and sanded. So a pantry whose trim waits for the hall is not done before
the hall is, and a hall that waits for the pantry never begins: of these 2 rooms none can be done first.

The message names the rooms of the circle, once, at the first of its lines; the others are one click away. Take one of the lines away;
the days are reckoned as if none of these lines were there.`,
    wrong,
    right: changed(wrong, '    after-room hall before trim\n', '    crews 2\n'),
    basis: 'The text alone.',
    check: {
        room({ layout: { room: { name, putUp } } }, report) {
            for (const wait of putUp?.waits ?? []) {
                if (wait.kind !== 'room' || !('circle' in wait.room.value)) continue;
                const { circle } = wait.room.value, { at } = wait.room, [first, ...others] = circle.toSorted((a, b) => compareSources(a.at, b.at));
                // told once, at the first of its words
                if (!sameSource(first!.at, at)) continue;
                report({
                    ...wordsOf(wait.room),
                    message: others.length === 0 ? `Room ${name} waits for itself.`
                        : `None of these rooms can be done first: ${listed(circle.map(({ room, waitsFor }) => `${room} waits for ${waitsFor}`))}.`,
                    related: others.map(({ room, waitsFor, at: other }) => ({ at: other, message: `${room} waits for ${waitsFor}` })),
                });
            }
        },
    },
});
