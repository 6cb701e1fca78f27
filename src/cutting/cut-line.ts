import type { AsCut, JobSettings } from '../job/model.ts';
import { printLength, type Show } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import { recordOf } from './as-cut.ts';
import type { Board } from './model.ts';
import { leftAfter } from './rest.ts';

/**
 * The lines that say in the rooms' `measured` that a board is cut, and how its pieces: `cut 16' of poplar-1x6 into bottom-2 at 9' 5" left 6'`. A
 * board with pieces of several rooms has one in each: the first cuts the whole board, the next what that one left. Undefined where
 * a length in it cannot be written exactly. Pieces cut otherwise stand on a line of their own, under the length.
 * @param stockName what the stock is called in a room's file
 */
export function cutLines(board: Board, stockName: (room: string) => string, job: JobSettings): { room: string; line: string }[] | undefined {
    const show = job.show.value;
    const pieces = board.strips.flatMap(strip => strip.pieces);
    const isRipped = board.strips.some(strip => strip.rippedTo !== undefined);
    const rooms = [...new Set(pieces.map(piece => piece.room))];
    const lines: { room: string; line: string }[] = [];
    let length = board.length;
    for (const room of rooms) {
        const own = pieces.filter(piece => piece.room === room);
        const left = isRipped ? 0 : leftAfter(own, length, job);
        const isKept = left > 0 && (left >= job.shortestOffcut.value || room !== rooms.at(-1));
        const said = exactLength(length, show), rest = exactLength(left, show);
        const into = intoTexts(own.map(piece => ({ name: nameInRoom(piece), asCut: recordOf(piece) })), show);
        if (said === undefined || into === undefined || isKept && rest === undefined) return undefined;
        const words = [`cut ${said} of ${stockName(room)}`, ...into, ...isKept ? [`left ${rest}`] : []];
        lines.push({ room, line: words.join(into.length > 1 ? UNDER_THE_VALUE : ' ') });
        if (isKept) length = left;
    }
    return lines;
}

/**
 * Pieces with how they were cut, those alike that follow each other together: `into a, b at 3' 6 5/8" left-hand 45°`, `into c at 24"`.
 * Undefined where a length in it cannot be written exactly.
 */
export function intoTexts(names: readonly { readonly name: string; readonly asCut?: AsCut }[], show: Show): string[] | undefined {
    const groups: { names: string[]; record: string }[] = [];
    for (const { name, asCut } of names) {
        const record = asCut ? recordText(asCut, show) : '';
        if (record === undefined) return undefined;
        const written = PLAIN.test(name) ? name : JSON.stringify(name);
        const last = groups.at(-1);
        if (last?.record === record) last.names.push(written);
        else groups.push({ names: [written], record });
    }
    return groups.map(group => `into ${group.names.join(', ')}${group.record}`);
}

function recordText({ length, miters, hand }: AsCut, show: Show): string | undefined {
    const at = exactLength(length, show);
    const ends = miters.length === 0 ? '' : ` ${hand ? `${hand}-hand` : 'mitered'} ${miters.map(degrees => `${degrees}°`).join(', ')}`;
    return at && ` at ${at}${ends}`;
}

const UNDER_THE_VALUE = `\n${' '.repeat('cut '.length)}`;

/** A name that needs no quotes. */
const PLAIN = /^[A-Za-z_]\w*(?:-\w+)*$/;

/** The line for the stock's block that says what is on hand of it: `on-hand 2 x 9' 4", 1 x 31"`, those of one worth on a line. */
export function onHandLines(pieces: readonly { readonly count: number; readonly length: Ticks; readonly worth?: string }[], show: Show): string[] {
    const worths = [...new Set(pieces.map(piece => piece.worth))];
    return worths.map(worth => {
        const alike = pieces.filter(piece => piece.worth === worth).map(({ count, length }) => `${count} x ${printLength(length, show)}`);
        return `on-hand ${alike.join(', ')}${worth === undefined ? '' : ` worth ${worth}`}`;
    });
}

function exactLength(ticks: Ticks, show: Show): string | undefined {
    const text = printLength(ticks, show);
    return text.startsWith('~') ? undefined : text;
}
