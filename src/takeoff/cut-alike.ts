import { compassOfEnd, endsFromTheLeft, endWords, endWordsOf, isTurned, longerEdgeOf, toldLengths } from './ends.ts';
import type { Piece } from './model.ts';

/**
 * Everything that is done to a piece, as one text: two pieces of one part and one stock with the same text are cut alike, and
 * a piece whose text has changed has to be cut otherwise. Which end is named first depends on where it hangs; what tells two
 * pieces apart at the saw is the hand.
 */
export function cutAlike(piece: Piece): string {
    const { hand, width, thickness, ripped, ends, work } = piece, { back, face, overall } = toldLengths(piece);
    const more = overall > Math.max(back, face) ? [overall] : [];
    const lies = hasNamedEnds(piece) ? ends.map((end, i) => `${compassOfEnd(piece, i === 0 ? 'first' : 'last')} ${endWordsOf(piece, end)}`)
        : isHanded(piece) ? endsFromTheLeft(piece).map(end => endWords(end)) : ends.map(end => endWords(end)).sort();
    return JSON.stringify([back, face, hand, width, thickness, ripped, lies, work, ...more]);
}

/** What lies and leans is told by its place: which end, and which edge is the longer there. */
export function hasNamedEnds(piece: Piece): boolean {
    return piece.ends.some(end => longerEdgeOf(piece, end) !== undefined);
}

/**
 * Its ends are unlike, and turned end for end it is another piece, while no hand tells which: both lean, or one does and a groove says which edge is
 * down.
 */
export function isHanded({ ends: [a, b], hand, work }: Piece): boolean {
    if (endWords(a) === endWords(b)) return false;
    return isTurned(a) && isTurned(b) || hand === null && (isTurned(a) || isTurned(b)) && work.some(({ kind }) => kind === 'rabbet');
}

/**
 * How a piece is cut, short enough to be kept with a tick: its two cut lengths in ticks, so that what it was cut at can be told
 * later, and a hash (FNV-1a, 32 bits) of all that is done to it.
 */
export function fingerprintOf(piece: Piece): string {
    return `${piece.cutBack}.${piece.cutFace}.${hash(JSON.stringify([piece.part, piece.stock.name, cutAlike(piece)]))}`;
}

function hash(text: string): string {
    let value = 0x811c9dc5;
    for (let i = 0; i < text.length; i++) value = Math.imul(value ^ text.charCodeAt(i), 0x01000193);
    return (value >>> 0).toString(36);
}
