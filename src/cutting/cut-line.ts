import type { JobSettings } from '../job/model.ts';
import { printLength, type Show } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import type { Board } from './model.ts';
import { leftAfter } from './rest.ts';

/**
 * The lines that say in the rooms' `measured` that a board is cut: `cut 16' of poplar-1x6 into bottom-2, bottom-3 left 31"`. A
 * board with pieces of several rooms has one in each: the first cuts the whole board, the next what that one left. Undefined where
 * a length in it cannot be written exactly.
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
        if (said === undefined || isKept && rest === undefined) return undefined;
        lines.push({ room, line: `cut ${said} of ${stockName(room)} into ${own.map(nameInRoom).join(', ')}${isKept ? ` left ${rest}` : ''}` });
        if (isKept) length = left;
    }
    return lines;
}

/** The line for the stock's block that says what is on hand of it: `on-hand 2 x 9' 4", 1 x 31"`, those of one worth on a line. */
export function onHandLines(pieces: readonly { readonly count: number; readonly length: Ticks; readonly worth?: string }[], show: Show): string[] {
    const worths = [...new Set(pieces.map(piece => piece.worth))];
    return worths.map(worth => {
        const alike = pieces.filter(piece => piece.worth === worth).map(({ count, length }) => `${count} x ${printLength(length, show)}`);
        return `on-hand ${alike.join(', ')}${worth === undefined ? '' : ` worth ${worth}`}`;
    });
}

function exactLength(ticks: Ticks, show: Show): string | undefined {
    return [printLength(ticks, show), printLength(ticks, show === 'millimeters' ? 'feet-inches' : 'millimeters')].find(text => !text.startsWith('~'));
}
