import { distance } from 'fastest-levenshtein';
import { replacing, type Fix } from '../../findings/finding.ts';
import type { Source } from '../../provenance/source.ts';
import { quoted } from '../types/words.ts';

const MOST = 3;

/** Nobody slips in a longer word and is helped by a guess. */
const LONGEST_WORD = 60;

/** The words that somebody who wrote `word` may have meant, the likeliest first. */
export function near(word: string, among: Iterable<string>): readonly string[] {
    if (word.length > LONGEST_WORD) return [];
    const written = word.toLowerCase(), most = slips(written);
    const candidates: { candidate: string, far: number }[] = [];
    for (const candidate of new Set(among)) {
        const meant = candidate.toLowerCase();
        const alike = Math.abs(written.length - meant.length) <= most;
        const far = alike
            && isSwapped(written, meant) ? 0.5 : isBegun(written, meant) || isOneWordOf(written, meant) ? 1 : alike ? distance(written, meant) : Infinity;
        if (far <= most) candidates.push({ candidate, far });
    }
    return candidates.sort((a, b) => a.far - b.far || (a.candidate < b.candidate ? -1 : 1)).slice(0, MOST).map(c => c.candidate);
}

/** The right letters, two of them in the wrong order. */
function isSwapped(written: string, meant: string): boolean {
    return written.length === meant.length && distance(written, meant) === 2 && [...written].sort().join('') === [...meant].sort().join('');
}

/** Only the beginning of a word is as good as one slip of the finger. */
function isBegun(written: string, meant: string): boolean {
    return written.length > 2 && meant.startsWith(written);
}

/** The wood without its kind, `poplar` or `oak`: one whole word of a name that has several. */
function isOneWordOf(written: string, meant: string): boolean {
    return written.length > 2 && meant.includes(written) && meant.split('-').includes(written);
}

/**
 * Guesses cost as much as there are names, and a file may have thousands of words that mean nothing: whoever reads it then
 * starts with the first of them, and from some point on no more is guessed.
 */
export class Patience {
    private left = 400_000;

    /** True where as many names may still be looked at; then they count as looked at. */
    for(names: number): boolean {
        this.left -= names + 10;
        return this.left > 0;
    }
}

/** How many letters may be wrong: one in a short word, one in three in a longer one. */
function slips(word: string): number {
    return Math.max(1, Math.floor(word.length / 3));
}

/** `; did you mean `height`?`, or nothing. */
export function didYouMean(words: readonly string[]): string {
    return words[0] === undefined ? '' : `; did you mean ${quoted(words[0])}?`;
}

/** A fix for each word that may have been meant. */
export function meantFixes(at: Source, words: readonly string[]): readonly Fix[] {
    return words.map((word, i) => replacing(at, word, { title: `Write ${quoted(word)}`, preferred: i === 0 }));
}
