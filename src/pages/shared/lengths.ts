/** A length as src/quantity prints it, of feet and inches or of millimeters, where no word or figure runs into it. */
const LENGTH = /(?<![\w'".\u2044])[~-]?(?:\d+'(?!\w)(?: (?:\d+ )?\d+(?:\/\d+)?")?|(?:\d+ )?\d+(?:\/\d+)?"|\d+(?:\.\d+)? mm\b)/g;

/** A stretch of words: a length, with its fraction as it is set, or what stands between lengths. */
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
        stretches.push({ words: length.replace(/(?<=\d)\/(?=\d)/, '\u2044'), isLength: true });
        from = index + length.length;
    }
    if (from < words.length) stretches.push({ words: words.slice(from), isLength: false });
    return stretches;
}
