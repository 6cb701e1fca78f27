const TYPOGRAPHY: Readonly<Record<string, string>> = { '\u2044': '/', '\u00d7': 'x', '\u2018': "'", '\u2019': "'", '\u201c': '"', '\u201d': '"', '\u2013': '-', '\u2014': '-', '\u2026': '...', '\u00a0': ' ' };

/**
 * Text as a DXF reader shows it. Fractions are written with a plain slash: the lettering of a drawing program forms none from
 * U+2044 and often has no such letter; the same goes for other letters of fine typography. Names keep all of theirs. What such programs take
 * for a command (`%%d`, `^J`, `\U+00B0`) is written
 * so that it stays what it is: text.
 */
export function plainText(words: string): string {
    return words
        .replace(/[\u2044\u00d7\u2018\u2019\u201c\u201d\u2013\u2014\u2026\u00a0]/g, letter => TYPOGRAPHY[letter]!)
        .replace(/\\(?=[UM]\+)/gi, '\\U+005C')
        .replaceAll('^', '^ ')
        .replace(/%(?=%)/g, '%%%');
}
