import type { Source } from '../provenance/source.ts';
import { PLURAL, type Part } from './part.ts';
import { listed } from '../plain/words.ts';

/** Something that a text says, that is read, and that nothing is computed from yet. */
export interface NotComputed {
    readonly at: Source;
    /** "which line runs through at one crossing". */
    readonly words: string;
    readonly spoils: Spoils;
}

/**
 * Which figures would be wrong if they were told as if it had not been said. `nothing`: all are right, and something is not
 * looked at. `figures`: some that are told may be wrong, or lack it. `instead`: every length of the room may be wrong,
 * so it is not laid out; it says what can be computed. Else the
 * pieces that are left out of every list: those of these parts, of these lines where it names some; or, of a wall, those that run along it,
 * end at it, or go round a coffer beside it.
 */
export type Spoils = 'nothing' | 'figures' | { readonly instead: string } | SpoiledPieces;
interface SpoiledPieces { readonly parts: readonly Part[]; readonly lines?: readonly string[]; readonly wall?: string }

export function spoiledPieces({ spoils }: NotComputed): SpoiledPieces | undefined {
    return typeof spoils !== 'string' && 'parts' in spoils ? spoils : undefined;
}

/** What of a piece tells whether it is spoiled. */
interface Place {
    readonly part: Part;
    readonly line: string | null; readonly coffer: number | null;
    readonly on: string | null;
    readonly meets: readonly (string | null)[];
}

/** `beside`: whether a coffer lies at a wall, with no line between them. */
export function isSpoiled(piece: Place, said: readonly NotComputed[], beside: (coffer: number, wall: string) => boolean): boolean {
    return said.some(one => {
        const pieces = spoiledPieces(one);
        if (!pieces?.parts.includes(piece.part)) return false;
        if (pieces.wall) return isAt(pieces.wall, piece, beside);
        return !pieces.lines || (piece.line !== null && pieces.lines.includes(piece.line));
    });
}

function isAt(wall: string, { part, line, on, coffer, meets }: Place, beside: (coffer: number, wall: string) => boolean): boolean {
    if (part === 'trim') return coffer !== null && beside(coffer, wall);
    return line === null && on === wall || meets.includes(wall);
}

/** `blocking and bottoms of lines B and 2`. */
export function spoiledWords({ parts, lines = [], wall }: SpoiledPieces): string {
    if (wall) return `${listed(parts.map(part => PLURAL[part]))} along the ${wall} wall, or ending at it`;
    const of = lines.length === 0 ? '' : ` of ${lines.length === 1 ? 'line' : 'lines'} ${listed(lines)}`;
    return `${listed(parts.map(part => PLURAL[part]))}${of}`;
}
