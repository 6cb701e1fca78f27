/** A length as src/quantity prints it, of feet and inches or of millimeters. */
const ONE = String.raw`[~-]?(?:\d+'(?!\w)(?: (?:\d+ )?\d+(?:[/\u2044]\d+)?")?|(?:\d+ )?\d+(?:[/\u2044]\d+)?"|\d+(?:\.\d+)? mm\b)`;
/** A length where no word or figure runs into it, with those that it makes one figure with: `3/4" x 5 1/2"`, `5 1/2" ± 1/64"`. */
const LENGTH = new RegExp(String.raw`(?<![\w'".\u2044])${ONE}(?: [x×±] ${ONE})*`, 'g');

/** A stretch of words: a length or a size of several, with fractions as they are set, or what stands between lengths. */
interface Stretch { readonly words: string; readonly isLength: boolean }

/**
 * Words in stretches. A fraction is set with the slash of its own, by which the pages' letters draw it as one sign, as the drawings do; it can be
 * typed so in a job too.
 */
export function inStretches(words: string): readonly Stretch[] {
    const stretches: Stretch[] = [];
    let from = 0;
    for (const { 0: length, index } of words.matchAll(LENGTH)) {
        if (index > from) stretches.push({ words: words.slice(from, index), isLength: false });
        stretches.push({ words: length.replace(/(?<=\d)\/(?=\d)/g, '\u2044'), isLength: true });
        from = index + length.length;
    }
    if (from < words.length) stretches.push({ words: words.slice(from), isLength: false });
    return stretches;
}
