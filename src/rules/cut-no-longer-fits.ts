import { creditOf, hasItsEnds, recordOf, usableFor, type Misfit } from '../cutting/as-cut.ts';
import { usesOf, type CutPiece, type Use } from '../cutting/uses.ts';
import type { Fix } from '../findings/finding.ts';
import type { AsCut, JobSettings } from '../job/model.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import type { Piece } from '../takeoff/model.ts';
import { defineRule } from './rule.ts';
import { intoFix } from './support/cut-boards.ts';
import { changed, HALL_IN_WORK } from './support/examples.ts';
import { wordsOf } from './support/places.ts';
import { useFix, USELESS, useText } from './support/uses.ts';
import { sizesOf, type Sizes } from './support/words.ts';

const right = changed(changed(HALL_IN_WORK, '    spoiled  side-A-1-north\n', ''), `    cut      6' of poplar-1x6 into side-A-1-north at 48 3/4" mitered 45°\n`, '');
const wrong = changed(right, `at 48 3/4" mitered 45° left 44"`, `at 49 7/8" mitered 45° left 44"`);

export const cutNoLongerFits = defineRule({
    name: 'cut-no-longer-fits',
    severity: 'error',
    title: 'A piece was cut differently from what is needed now',
    explanation: `
Wood keeps the length, the miters and the hand it was cut with, whatever becomes of the drawing. Where a wall is measured again or the
grid is changed after the first boards are cut, the record after \`into\` says how a piece was cut, and the cut list how it is needed.

\`side-A-1-north\` was cut at 49 7/8" and is now needed at 48 3/4": trim 1 1/8" off, and write the new length. Cut at 48", it would be
3/4" too short and lost, unless another piece of that board is needed just like it, or smaller: the finding names the one of its room that
keeps the most of the wood, as \`compare\` does over all rooms, whatever part it is. A left-hand piece is not a right-hand one: its
miter has to come off first, which with a thickness of 3/4" at 45° takes 3/4" of its length.

Until then such a piece does not count as cut: boards, order and saw list it again, and do not use it as an offcut. Recut it
and write how it is now, put it where it fits, or give it up with \`spoiled\`.`,
    wrong,
    right,
    basis: 'Cut lengths, miters and hands of the cut list. A length has to be the same; angles are compared to 0.01°.',
    check: {
        room({ layout: { room }, job, pieces }, report) {
            if (room.cutBoards.length === 0) return;
            const { misfits } = creditOf(room, pieces()), uses = misfits.length > 0 ? usesOf(room, pieces()) : new Map<unknown, CutPiece>();
            const size = sizesOf(job);
            for (const misfit of misfits) {
                const { piece, name, record, board } = misfit, use = uses.get(name)?.use;
                const words = (cut: AsCut): string => cutWords(cut, { piece, record, size });
                report({
                    ...wordsOf(name),
                    message: `${name.value} was cut ${words(record)}, and is now needed ${words(recordOf(piece))}. ${remedy(misfit, use, job)}`,
                    related: [...record.at ? [{ at: record.at, message: `it was cut at ${size(record.length)}` }] : [], { at: piece.source, message: `this makes it ${size(piece.cutOverall)} long` }],
                    fixes: [
                        ...use ? useFix(board, name, use, job) : [],
                        ...isRecut(misfit) ? intoFix(board, one => (one === name ? recordOf(piece) : one.asCut), job, 'It has been recut: write how it is now') : [],
                        ...spoiledFix(misfit),
                    ],
                });
            }
        },
    },
});

function isRecut({ piece, record }: Misfit): boolean {
    return usableFor(piece, record) >= piece.cutOverall;
}

/** `at 3' 6 5/8"`, and where its ends are not as they have to be `at 3' 6 5/8", left-hand 45°`. */
function cutWords(cut: AsCut, { piece, record, size }: { piece: Piece; record: AsCut; size: Sizes }): string {
    if (hasItsEnds(piece, record)) return `at ${size(cut.length)}`;
    const angles = cut.miters.map(degrees => `${degrees}°`).join(' and ');
    return `at ${size(cut.length)}, ${cut.miters.length === 0 ? 'square' : cut.hand ? `${cut.hand}-hand ${angles}` : `mitered ${angles}`}`;
}

function remedy(misfit: Misfit, use: Use | undefined, job: JobSettings): string {
    const { piece, record } = misfit, size = sizesOf(job);
    const wanted = piece.cutOverall, over = record.length - wanted, elsewhere = use ? useText(use, record, job) : '';
    if (isRecut(misfit)) {
        const how = hasItsEnds(piece, record) ? `Trim ${size(over)} off` : over > 0 ? `Recut its ends, ${size(over)} shorter in all` : 'Recut its ends';
        return `${elsewhere && `${elsewhere} Or: `}${how}, and write how it was recut. Until then it counts as not cut.`;
    }
    const short = wanted - usableFor(piece, record);
    const why = hasItsEnds(piece, record) ? `It is ${size(short)} too short` : `With its miter cut off it would be ${size(short)} too short`;
    return `${why}, so it has to be cut again. ${elsewhere || `${USELESS} Or write \`spoiled ${nameInRoom(piece)}\`.`}`;
}

function spoiledFix({ name, piece, board: { at } }: Misfit): Fix[] {
    if (!name.said || name.via?.length) return [];
    const { start } = at.range;
    const text = `spoiled ${nameInRoom(piece)}\n${' '.repeat(start.character)}`;
    return [{ title: `It is lost: write that ${nameInRoom(piece)} is spoiled`, edits: [{ uri: at.uri, range: { start, end: start }, text }] }];
}
