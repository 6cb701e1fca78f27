import { distance } from 'fastest-levenshtein';
import { usesOf, type CutPiece } from '../cutting/uses.ts';
import type { CutBoard, CutName, JobSettings, Room } from '../job/model.ts';
import type { Piece } from '../takeoff/model.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import { listed } from '../plain/words.ts';
import { defineRule } from './rule.ts';
import { changed, HALL_IN_WORK } from './support/examples.ts';
import { replacing } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { useFix, USELESS, useText } from './support/uses.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL_IN_WORK, '6\' of poplar-1x6 into side-A-1-north', '6\' of poplar-1x6 into side-A-4-north');

export const noSuchPiece = defineRule({
    name: 'no-such-piece',
    severity: 'error',
    title: 'A piece is recorded as cut or spoiled that is not in the cut list',
    explanation: `
What is cut and what is spoiled is recorded by the names in the cut list, without the room: \`bottom-2\`, \`side-A-1-north\`. A name
that is not in it counts for nothing, so the boards would be planned as if the piece were still to be cut.

A line of 3 coffers has the bays 1 to 3: there is no \`side-A-4-north\`. Names come from the place alone, so a piece keeps its
name when something else is changed; only another number of lines changes it.

Where the grid was changed after the first boards are cut, and the record says how the piece was cut, the finding names the one of its
room that it is best recut as, so that the most of the wood is kept, as \`compare\` does over all rooms: a side that was cut at 49 7/8"
for a bay that is gone becomes one of 48 3/4" by trimming 1 1/8" off. A fix writes that.`,
    wrong,
    right: HALL_IN_WORK,
    basis: 'Names as the cut list has them.',
    check: {
        room({ layout: { room }, job, pieces }, report) {
            const said = namesSaid(room);
            if (said.length === 0) return;
            const known = new Set(pieces().map(nameInRoom));
            if (known.size === 0) return;
            let uses: ReturnType<typeof usesOf> | undefined;
            for (const { name, board } of said) {
                if (known.has(name.value)) continue;
                const near = nearest(name.value, pieces()), spliced = [...known].filter(one => isPieceOf(name.value, one));
                const instead = spliced.length > 1 ? ` It is spliced: ${listed(spliced)}.` : near === undefined ? '' : ` Did you mean ${near}?`;
                const cut = instead === '' && board ? (uses ??= usesOf(room, pieces())).get(name) : undefined;
                report({
                    ...wordsOf(name), message: `There is no ${name.value} in the cut list of ${room.name}.${instead}${cut ? recutText(cut, job) : ''}`,
                    fixes: cut?.use ? useFix(board!, name, cut.use, job) : replacing(name, near, `Write ${near}`),
                });
            }
        },
    },
});

interface Said { readonly name: CutName; readonly board?: CutBoard }

function namesSaid(room: Room): Said[] {
    return [...room.spoiled.map(name => ({ name })), ...room.cutBoards.flatMap(board => board.into.map(name => ({ name, board })))];
}

function recutText({ piece: { cutOverall: length }, use }: CutPiece, job: JobSettings): string {
    return ` It was cut at ${sizesOf(job)(length)}. ${use ? useText(use, { length }, job) : USELESS}`;
}

/** Whether it is one of the pieces of a run of that name that is spliced: `blocking-1-a` of `blocking-1`. */
function isPieceOf(run: string, piece: string): boolean {
    return piece.startsWith(`${run}-`) && /^[a-z]+$/.test(piece.slice(run.length + 1)) && !/-(north|east|south|west|wall)$/.test(piece);
}

/** The piece whose name is a slip away. Another line or number is no slip but another place: nobody can tell which one is meant. */
function nearest(name: string, pieces: readonly Piece[]): string | undefined {
    let best: { readonly name: string; readonly away: number } | undefined;
    for (const known of new Set(pieces.map(nameInRoom))) {
        const away = placesIn(name) === placesIn(known) ? distance(name.toLowerCase(), known.toLowerCase()) : Infinity;
        if (away <= Math.min(3, known.length / 3) && (!best || away < best.away)) best = { name: known, away };
    }
    return best?.name;
}

/** Its lines, bays and numbers: `A 1` in `side-A-1-north`. */
function placesIn(name: string): string {
    return name.split('-').map(word => (word.length <= 2 ? word : '…')).join(' ');
}
