import type { JobSettings } from '../job/model.ts';
import { plural, PLURAL, type Part } from '../job/part.ts';
import { tapeOf } from '../job/tape.ts';
import { grouped } from '../plain/groups.ts';
import { listed } from '../plain/words.ts';
import { printMark } from '../quantity/print-length.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import type { Piece } from '../takeoff/model.ts';
import type { Wrong } from '../cutting/at-bench.ts';
import type { BoardAtBench, Leftover } from './bench.ts';

const MOST_NAMED = 3;

/** `bottom-2 and bottom-3`; of many how many of which part: `12 sides and 4 bottoms`. */
export function piecesWords(pieces: readonly Piece[], most = MOST_NAMED): string {
    if (pieces.length <= most) return listed(pieces.map(nameInRoom));
    return listed([...grouped(pieces, ({ part }) => part)].map(([part, own]) => countedPart(part, own.length)));
}

function countedPart(part: Part, count: number): string {
    return `${count} ${count === 1 ? part : plural(part, count) === part ? PLURAL[part] : plural(part, count)}`;
}

/** `1/16" too narrow`. */
function wrongWords(wrong: Wrong): string {
    switch (wrong) {
        case 'too-narrow': return 'too narrow';
        case 'too-thin': return 'too thin';
        case 'too-thick': return 'too thick';
        case 'too-short': return 'too short';
        case 'groove-off': return 'its groove is off';
    }
}

/** `too narrow for 4 bottoms; too short for side-A-1-north`. */
export function spoilsWords({ spoils }: Pick<BoardAtBench, 'spoils'>): string {
    return [...spoils].map(([wrong, pieces]) => `${wrong === 'groove-off' ? 'with its groove no good' : wrongWords(wrong)} for ${piecesWords(pieces)}`).join('; ');
}

/** `bottom-2 from the 3' 8" that is left`. */
export function recutWords(recut: BoardAtBench['recut'], job: JobSettings): string {
    return recut.map(({ piece, from }) => `${nameInRoom(piece)} ${from ? leftoverWords(from, job) : 'from a new board'}`).join('; ');
}

function leftoverWords({ length, what }: Leftover, job: JobSettings): string {
    const size = printMark(length, tapeOf(job));
    switch (what) {
        case 'left': return `from the ${size} that is left`;
        case 'on hand': return `from the ${size} on hand`;
        case 'offcut': return `from the ${size} that the other pieces leave of a board`;
    }
}
