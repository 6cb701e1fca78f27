import { recordOf } from '../cutting/as-cut.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import { defineRule } from './rule.ts';
import { boardWords, intoFix } from './support/cut-boards.ts';
import { changed, HALL_IN_WORK } from './support/examples.ts';
import { wordsOf } from './support/places.ts';
import { counted, listed } from '../plain/words.ts';

const wrong = changed(HALL_IN_WORK, `6' of poplar-1x6 into side-A-1-north at 48 3/4" mitered 45°`, `6' of poplar-1x6 into side-A-1-north`);

export const cutWithoutRecord = defineRule({
    name: 'cut-without-record',
    severity: 'hint',
    title: 'There is no record of how a piece was cut',
    explanation: `
A piece that is recorded as cut counts as the list has it today. When a wall is measured again, the drawing changes and the wood does not:
only a record of how it was cut can tell that \`side-A-1-north\`, cut at 48 3/4", no longer goes into a bay that needs 47 5/8".

The record comes after the names: \`into side-A-1-north at 48 3/4" mitered 45°\`. The quick fix writes it as the piece is needed now,
so use it before anything is changed, or tape the piece and write what you find.`,
    wrong,
    right: HALL_IN_WORK,
    basis: 'Cut lengths, miters and hands of the cut list.',
    check: {
        room({ layout: { room }, job, pieces }, report) {
            if (room.cutBoards.length === 0) return;
            const listedPieces = new Map(pieces().map(piece => [nameInRoom(piece), piece]));
            for (const board of room.cutBoards) {
                const open = board.into.filter(({ value, asCut }) => !asCut && listedPieces.has(value));
                const [first] = open;
                if (!first) continue;
                const names = [...new Set(open.map(({ value }) => value))];
                report({
                    ...wordsOf(first),
                    message: `Nothing shows how ${names.length > 3 ? counted(names.length, 'piece') : listed(names)} from ${boardWords(board, job)} ${names.length === 1 ? 'was' : 'were'} cut. If the drawing changes, a wrong length would go unnoticed.`,
                    fixes: intoFix(board, ({ value, asCut }) => asCut ?? (listedPieces.has(value) ? recordOf(listedPieces.get(value)!) : undefined), job, 'Write how they are needed now'),
                });
            }
        },
    },
});
