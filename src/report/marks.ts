import type { Piece } from '../takeoff/model.ts';
import { counted } from './look.ts';

/** What is penciled on a piece: its name without the room, `side-B-3-north`. */
export function markOf(piece: Piece): string {
    return withoutPrefix(piece.id, `${piece.room}.`);
}

/** The same where the list already says which part it is: `B-3-north`. */
export function placeMarkOf(piece: Piece): string {
    return withoutPrefix(markOf(piece), `${piece.part}-`);
}

/** Spacers are all alike and too many to name: so many a line. Everything else by its mark. */
export function marksText(pieces: readonly Piece[], markOf: (piece: Piece) => string): string {
    const spacers = new Map<string, number>();
    for (const piece of pieces) if (piece.part === 'spacer' && piece.line !== null) spacers.set(piece.line, (spacers.get(piece.line) ?? 0) + 1);
    return [
        ...[...spacers].map(([line, count]) => `${counted(count, 'spacer')} for line ${line}`),
        ...pieces.filter(piece => piece.part !== 'spacer' || piece.line === null).map(markOf),
    ].join(', ');
}

function withoutPrefix(text: string, prefix: string): string {
    return text.startsWith(prefix) ? text.slice(prefix.length) : text;
}
