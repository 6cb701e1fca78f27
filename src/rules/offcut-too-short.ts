import type { CutBoard, JobSettings } from '../job/model.ts';
import { roundDown } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { piecesAsCut } from '../cutting/as-cut.ts';
import { blankOf, type Blank } from '../cutting/blank.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import type { Piece } from '../takeoff/model.ts';
import { defineRule, type Report } from './rule.ts';
import { boardWords } from './support/cut-boards.ts';
import { changed, HALL_IN_WORK } from './support/examples.ts';
import { replacing, spelled } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';
import { counted } from '../plain/words.ts';

const wrong = changed(HALL_IN_WORK, `cut      6' of poplar-1x6`, `cut      48" of poplar-1x6`);

export const offcutTooShort = defineRule({
    name: 'offcut-too-short',
    severity: 'error',
    title: 'More is recorded as cut from a board than it is long',
    explanation: `
Pieces, the kerfs between them and what is left cannot be longer than the board or offcut they come out of. Ends need not be
trimmed here: this is what was cut, not what is planned.

\`side-A-1-north\` is 48 3/4" between its long points. A board of 48" is 3/4" too short for it: either the board was another one,
or the piece. And three pieces of 30" out of 8' take 90" and three kerfs, so that at most 5 5/8" is left. A bottom of 7' as wide as the
board leaves no strip of 3' beside it or behind it.`,
    wrong,
    right: HALL_IN_WORK,
    basis: 'The sum of the lengths, with a kerf between two; strips that come out of the width side by side count once. What is too wide to lie beside a strip lies before it.',
    check: {
        room({ layout: { room }, job, pieces }, report) {
            for (const board of room.cutBoards) checkBoard(board, piecesAsCut(board, pieces()), job, report);
        },
    },
});

function checkBoard(board: CutBoard, pieces: readonly Piece[], job: JobSettings, report: Report): void {
    const size = sizesOf(job);
    const whole = board.length.value, kerf = job.kerf.value;
    const tooLong = pieces.find(piece => piece.cutOverall > whole);
    if (tooLong) {
        const name = board.into.find(({ value }) => value === nameInRoom(tooLong))!;
        report({
            ...wordsOf(name), message: `${boardWords(board, job)} is ${size(tooLong.cutOverall - whole)} too short for ${name.value}, which is ${size(tooLong.cutOverall)}.`,
            related: [{ at: board.length.at, message: `the board is ${size(whole)}` }],
        });
        return;
    }
    const blanks = new Map(pieces.map(piece => [piece, blankOf(piece, job)]));
    const impossible = pieces.find(piece => typeof blanks.get(piece) === 'string');
    if (impossible) {
        const name = board.into.find(({ value }) => value === nameInRoom(impossible))!;
        report({ ...wordsOf(name), message: `${name.value} cannot come out of ${boardWords(board, job)}: ${blanks.get(impossible) as string}.` });
        return;
    }
    const boardWidth = pieces[0]?.stock.width?.value.ticks ?? Infinity;
    const sideBySide = pieces.filter(piece => 2 * piece.cutOverall + kerf > whole);
    const across = sideBySide.reduce((sum, piece) => sum + (blanks.get(piece) as Blank).width + kerf, -kerf);
    if (sideBySide.length > 1 && across > boardWidth) {
        report({
            ...wordsOf(board.length),
            message: `${counted(sideBySide.length, 'piece')} that are longer than half of ${boardWords(board, job)} cannot lie end to end in it, and side by side they take ${size(across)} of its ${size(boardWidth)}, kerfs included.`,
        });
        return;
    }
    const { behind, taken } = longestRow(pieces.map(piece => blanks.get(piece) as Blank), boardWidth, kerf);
    const left = board.left ?? [], kept = left.reduce((sum, one) => sum + one.value, 0);
    const most = whole - taken;
    if (taken - kerf <= whole && kept <= Math.max(0, most)) return;
    const sum = `${counted(behind, 'piece')} of ${size(Math.round(taken - kerf * behind))} in all with ${counted(behind, 'kerf')}`;
    if (taken - kerf > whole) {
        report({ ...wordsOf(board.length), message: `${sum} cannot come out of ${boardWords(board, job)}: it is ${size(Math.round(taken - kerf - whole))} too short.` });
        return;
    }
    const fits = Math.max(0, roundDown(Math.floor(most), job.cutTo.value));
    report({
        ...wordsOf(left[0]!),
        message: `${size(kept)} cannot be left over from ${boardWords(board, job)}: after ${behind === 0 ? 'no piece' : sum} there is at most ${size(fits)}.`,
        related: [{ at: board.length.at, message: `the board is ${size(whole)}` }],
        fixes: left.length === 1 ? replacing(left[0], spelled(fits, job), `Leave ${size(fits)}`) : [],
    });
}

/**
 * What at least is taken of a board's length, each piece with its kerf: all of it, what lies side by side counted once; or a strip and all the wide
 * pieces that leave no room for it beside them, of which no two lie side by side either.
 */
function longestRow(blanks: readonly Blank[], boardWidth: Ticks, kerf: Ticks): { readonly behind: number; readonly taken: number } {
    const long = ({ piece }: Blank): Ticks => piece.cutOverall + kerf;
    const wide = blanks.filter(({ abreast }) => abreast === 1);
    const rows = blanks.filter(({ abreast }) => abreast > 1).map(strip => {
        const before = wide.filter(({ width }) => width + kerf + strip.width > boardWidth);
        return { behind: before.length + 1, taken: [strip, ...before].reduce((sum, blank) => sum + long(blank), 0) };
    });
    const all = { behind: blanks.length, taken: blanks.reduce((sum, blank) => sum + long(blank) / blank.abreast, 0) };
    return rows.reduce((most, row) => (row.taken > most.taken ? row : most), all);
}
