import type { Piece } from './pieces.ts';
import type { Places } from './places.ts';

/** What stands between two pieces of one printed line, where no column begins. */
export function between(before: Piece, piece: Piece, places: Places): string {
    if (piece.begins && piece.kind !== '}' && before.kind !== '{' && before.kind !== '}') return '; ';
    if (before.kind === '(' || piece.kind === ')' || piece.kind === ',') return '';
    if (before.kind === '.' || piece.kind === '.' || piece.kind === '?') return '';
    if (places.tight.has(piece.offset) && (piece.kind === ':' || piece.kind === '(')) return '';
    if (places.tight.has(before.offset) && (before.kind === '-' || before.kind === '+')) return '';
    return ' ';
}

export function textOf(pieces: readonly Piece[], places: Places): string {
    return pieces.map((piece, i) => i === 0 ? piece.text : between(pieces[i - 1]!, piece, places) + piece.text).join('');
}
