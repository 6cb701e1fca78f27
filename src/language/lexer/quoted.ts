/** `"text"`, with `\"` for a quote in it, or “text” as a letter has it. Never over a line end. */
const CLOSED = /"(?:[^"\\\r\n]|\\.)*"|“[^”"\r\n]*[”"]/y;
const REST_OF_LINE = /[^\r\n]*/y;
/** What follows a text on its line in an ordinary file: the end of a value, or of a block. */
const AFTER_TEXT = /[\s;,(){}]/;

/**
 * The text that is quoted at an offset, with its quotes. One that is not closed ends with its line, but leaves alone
 * the brace or the comment there, which are hardly meant.
 */
export function quotedText(text: string, offset: number): string | undefined {
    // behind what it cannot read the lexer asks at every character: the rest of the line is not to be read each time
    if (text[offset] !== '"' && text[offset] !== '“') return undefined;
    CLOSED.lastIndex = offset;
    const closed = CLOSED.exec(text);
    if (closed) return closed[0];
    REST_OF_LINE.lastIndex = offset;
    return withoutEnd(REST_OF_LINE.exec(text)![0]);
}

/** Without the comment at its end, and without the signs before that. Each sign is looked at once: a pattern would begin anew at each of them. */
function withoutEnd(rest: string): string {
    const comment = rest.indexOf('//', 1);
    let end = comment < 0 ? rest.length : comment;
    while (end > 1 && AFTER_TEXT.test(rest[end - 1]!)) end--;
    return rest.slice(0, end);
}

export function isClosedText(image: string): boolean {
    return image.length > 1 && /^(?:"(?:[^"\\]|\\.)*"|“[^”"]*[”"])$/.test(image);
}

/** What the quotes hold. */
export function unquoted(image: string): string {
    const inner = image.slice(1, isClosedText(image) ? -1 : undefined);
    return image.startsWith('"') ? inner.replace(/\\(.)/g, '$1') : inner;
}
