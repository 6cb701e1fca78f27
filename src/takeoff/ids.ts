import type { Part, Piece } from './model.ts';

/**
 * Names of pieces: the room, then what the piece is and where, as a word of the job language, so that a piece can be
 * named in the job itself: `parlor.bottom-B-3`.
 *
 *     bottom-2, blocking-2            runs through on line 2
 *     bottom-A-a, bottom-A-b          its pieces, where it is spliced, from the west or north end
 *     bottom-C-2-through              the same on a line that is called C-2, and not bay 2 of line C
 *     bottom-B-3, blocking-B-3        cut between, in bay 3 of line B
 *     side-B-3-north, cleat-B-3-north north side of line B, bay 3
 *     side-B-3-north-a                of a side that is spliced in bay 3 the piece to the west or north
 *     spacer-B-3-2                    second spacer of that bay
 *     band-north, band-north-a        band on the north wall, and its first piece where it is spliced
 *     trim-5-north                    north side of coffer 5
 *     trim-5-north-a, trim-5-north-b  its pieces where it is scarfed, from the left of somebody who looks at it
 *     side-north-2, bottom-north      of the half beam along the north wall: its second side from the west, its bottom
 *     side-north-return-west          across the west end of that, where it ends before its wall does, or round an outside corner
 *     timber-2, timber-B-3            a solid beam, through and cut between
 *     molding-B-3-north               molding under that side; molding-north-2 under that of a half beam
 *     cleat-north-2, cleat-north-wall cleats on that side, and on the wall
 *     panel-5, panel-5-b              over coffer 5, and the second of those that it is made of
 *
 * Names come from the place alone, never from a count over all pieces: what is changed elsewhere leaves them as they are.
 */
export interface Place {
    readonly line?: string;
    /** Of a half beam: the wall it runs along. */
    readonly wall?: string;
    readonly coffer?: number;
    readonly bay?: number | null;
    readonly on?: string | null;
    /** Which of several in one place: the spacer's number, or the letter of a spliced piece. */
    readonly nth?: string | number | null;
}

export function idOf(room: string, part: Part, { line, wall, coffer, bay, on, nth }: Place): string {
    const through = line !== undefined && (bay ?? null) === null && looksLikeBay.test(line) ? 'through' : null;
    return `${room}.${part}${after(line ?? wall ?? coffer)}${after(bay)}${after(through)}${after(on)}${after(nth)}`;
}

/** Line C-2 may stand beside line C, which has a bay 2. */
const looksLikeBay = /-(?:\d+|[a-z])$/;

function after(word: string | number | null | undefined): string {
    return word === undefined || word === null ? '' : `-${word}`;
}

/** a, b, c … for the pieces of a spliced run; nothing where it is in one piece. */
export function spliceLetter(index: number, pieces: number): string | null {
    if (pieces === 1) return null;
    const letter = String.fromCharCode(97 + index % 26);
    return index < 26 ? letter : `${spliceLetter(Math.floor(index / 26) - 1, pieces)}${letter}`;
}

/** The name of a piece in its own room, as the room says that it is cut or spoiled, and as it is penciled on it: `side-B-3-north`. */
export function nameInRoom({ id, room }: Piece): string {
    return id.slice(room.length + 1);
}

/** The same where it is already said which part it is: `B-3-north`. */
export function placeInRoom({ id, room, part }: Piece): string {
    return id.slice(room.length + part.length + 2);
}

/** A piece as it is spoken of, by its name in the list: `side B-3-north`. */
export function spokenName(id: string): string {
    return withoutRoom(id).replace('-', ' ');
}

/** A piece's name in its own room, where only the whole name is known. */
export function withoutRoom(id: string): string {
    return id.slice(id.indexOf('.') + 1);
}
