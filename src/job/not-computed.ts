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
 * looked at. `instead`: every length of the room may be wrong, so it is not laid out; it says what can be computed. Else the
 * pieces that are left out of every list: those of these parts, of these lines where it names some.
 */
export type Spoils = 'nothing' | { readonly instead: string } | SpoiledPieces;
export interface SpoiledPieces { readonly parts: readonly Part[]; readonly lines?: readonly string[] }

export function spoiledPieces({ spoils }: NotComputed): SpoiledPieces | undefined {
    return spoils !== 'nothing' && 'parts' in spoils ? spoils : undefined;
}

export function isSpoiled({ part, line }: { readonly part: Part; readonly line: string | null }, said: readonly NotComputed[]): boolean {
    return said.some(one => {
        const pieces = spoiledPieces(one);
        return pieces !== undefined && pieces.parts.includes(part) && (!pieces.lines || (line !== null && pieces.lines.includes(line)));
    });
}

/** `blocking and bottoms of lines B and 2`. */
export function spoiledWords({ parts, lines = [] }: SpoiledPieces): string {
    const of = lines.length === 0 ? '' : ` of ${lines.length === 1 ? 'line' : 'lines'} ${listed(lines)}`;
    return `${listed(parts.map(part => PLURAL[part]))}${of}`;
}
