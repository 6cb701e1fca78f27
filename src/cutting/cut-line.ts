import type { AsCut, JobSettings } from '../job/model.ts';
import { grouped } from '../plain/groups.ts';
import { printLength, type Show } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
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
    const rooms = [...new Set(pieces.map(piece => piece.room))];
    const lines: { room: string; line: string }[] = [];
    let length = board.length;
    for (const room of rooms) {
        const own = pieces.filter(piece => piece.room === room);
        const taken = takenBy(board, room, rooms.slice(0, rooms.indexOf(room)));
        // strips of what a room before has cut off and ripped: only of that board can be said that it is cut
        const from = taken ? length : board.length;
        const left = taken ? leftAfter(taken.pieces, length - taken.sections.reduce((sum, section) => sum + section + job.kerf.value, 0), job) : 0;
        const isKept = left > 0 && (left >= job.shortestOffcut.value || room !== rooms.at(-1));
        const said = exactLength(from, show), rest = exactLength(left, show);
        const into = intoTexts(own.map(piece => ({ name: nameInRoom(piece), asCut: recordOf(piece) })), show);
        if (said === undefined || into === undefined || isKept && rest === undefined) return undefined;
        const words = [`cut ${said} of ${stockName(room)}`, ...into, ...isKept ? [`left ${rest}`] : []];
        lines.push({ room, line: words.join(into.length > 1 ? UNDER_THE_VALUE : ' ') });
        if (isKept) length = left;
    }
    return lines;
}

/**
 * What a room takes of the whole width: its pieces that lie there, and the sections that its strips come out of and no room before it has cut off.
 * Undefined where it takes nothing of it, or the board is ripped over its whole length.
 */
function takenBy({ strips, sections }: Board, room: string, before: readonly string[]): { pieces: readonly Piece[]; sections: readonly Ticks[] } | undefined {
    if (!sections && strips.some(strip => strip.rippedTo !== undefined)) return undefined;
    const pieces = strips.filter(strip => strip.rippedTo === undefined).flatMap(strip => strip.pieces).filter(piece => piece.room === room);
    const off = (sections ?? []).filter((_, i) => {
        const inIt = strips.filter(strip => strip.section === i + 1).flatMap(strip => strip.pieces.map(piece => piece.room));
        return inIt.includes(room) && !inIt.some(other => before.includes(other));
    });
    return pieces.length + off.length > 0 ? { pieces, sections: off } : undefined;
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

/** The lines for the stock's block that say what is on hand of it: `on-hand 2 x 9' 4", 1 x 31"`, those of one width and worth on a line. */
export function onHandLines(
    pieces: readonly { readonly count: number; readonly length: Ticks; readonly width?: Ticks; readonly worth?: string }[], show: Show,
): string[] {
    return [...grouped(pieces, ({ width, worth }) => `${width ?? ''} ${worth ?? ''}`).values()].map(alike => {
        const { width, worth } = alike[0]!;
        const each = alike.map(({ count, length }) => `${count} x ${printLength(length, show)}`).join(', ');
        return `on-hand ${each}${width === undefined ? '' : ` ripped-to ${printLength(width, show)}`}${worth === undefined ? '' : ` worth ${worth}`}`;
    });
}

function exactLength(ticks: Ticks, show: Show): string | undefined {
    const text = printLength(ticks, show);
    return text.startsWith('~') ? undefined : text;
}
