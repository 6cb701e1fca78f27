import type { Piece } from './model.ts';

/** What is penciled on a piece: its name without the room, `side-B-3-north`. */
export function markOf(piece: Piece): string {
    return withoutPrefix(piece.id, `${piece.room}.`);
}

/** The same where it is already said which part it is: `B-3-north`. */
export function placeMarkOf(piece: Piece): string {
    return withoutPrefix(markOf(piece), `${piece.part}-`);
}

function withoutPrefix(text: string, prefix: string): string {
    return text.startsWith(prefix) ? text.slice(prefix.length) : text;
}
