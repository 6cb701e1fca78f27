import { creditOf } from '../cutting/as-cut.ts';
import type { Given } from '../provenance/source.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import { defineRule } from './rule.ts';
import { boardWords } from './support/cut-boards.ts';
import { changed, HALL_IN_WORK } from './support/examples.ts';
import { wordsOf } from './support/places.ts';

const wrong = changed(HALL_IN_WORK, '    spoiled  side-A-1-north\n', '');

export const cutTwice = defineRule({
    name: 'cut-twice',
    severity: 'error',
    title: 'A piece is recorded as cut twice, though none was spoiled',
    explanation: `
Every piece is needed once. It may come out of a second board when the first one was spoiled: then write \`spoiled\` with its name,
once for each that was. Otherwise one of the two lines names the wrong piece, and the right one would be left out of the boards.

\`side-A-1-north\` came out of a board of 8' and out of another one of 6'. If the first is scrap, write \`spoiled side-A-1-north\`.`,
    wrong,
    right: HALL_IN_WORK,
    basis: 'Each piece of the cut list is there once.',
    check: {
        room({ layout: { room }, job, pieces }, report) {
            if (room.cutBoards.length === 0) return;
            const known = new Set(pieces().map(nameInRoom));
            const credit = creditOf(room, pieces()), may = new Map<string, number>();
            const before = new Map<string, { readonly name: Given<string>; readonly board: string }>();
            for (const board of room.cutBoards) {
                for (const name of board.into) {
                    const left = may.get(name.value) ?? credit.may(name.value);
                    may.set(name.value, left - 1);
                    const first = before.get(name.value);
                    if (!first) before.set(name.value, { name, board: boardWords(board, job) });
                    if (left > 0 || !first || !known.has(name.value)) continue;
                    report({
                        ...wordsOf(name),
                        message: `${name.value} is already cut, from ${first.board}. Which piece is meant here? If the first one is scrap, write \`spoiled ${name.value}\`.`,
                        related: [{ at: first.name.at, message: 'it is cut here' }],
                    });
                }
            }
        },
    },
});
