import type { Piece } from '../takeoff/model.ts';
import { counted } from '../plain/words.ts';

/** Spacers are all alike and too many to name: so many a line. Everything else by its name. */
export function marksText(pieces: readonly Piece[], nameOf: (piece: Piece) => string): string {
    const spacers = new Map<string, number>();
    for (const piece of pieces) if (piece.part === 'spacer' && piece.line !== null) spacers.set(piece.line, (spacers.get(piece.line) ?? 0) + 1);
    return [
        ...[...spacers].map(([line, count]) => `${counted(count, 'spacer')} for line ${line}`),
        ...pieces.filter(piece => piece.part !== 'spacer' || piece.line === null).map(nameOf),
    ].join(', ');
}
