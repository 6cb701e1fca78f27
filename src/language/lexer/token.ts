import type { LexerResult } from 'langium';

/** One token of the text, and its type. (The types are those of the lexer under Langium, named through Langium alone.) */
export type Token = LexerResult['tokens'][number];
export type TokenType = Token['tokenType'];
/** The types of the grammar by name: a terminal's, or the keyword itself. */
export type TokenTypes = Readonly<Record<string, TokenType>>;

export const isEnd = (token: Token): boolean => token.tokenType.name === 'EOL';
export const isOpen = (token: Token): boolean => token.tokenType.name === '{';
export const isClose = (token: Token): boolean => token.tokenType.name === '}';
/** Between two statements: nothing before, a line end, or a brace. */
export const isBoundary = (token: Token | undefined): boolean => !token || isEnd(token) || isOpen(token) || isClose(token);

/** A token that nobody typed, of no width, right after another. */
export function impliedAfter(type: TokenType, last: Token): Token {
    const line = last.endLine!;
    const column = last.endColumn! + 1;
    return {
        image: '', tokenType: type, tokenTypeIdx: type.tokenTypeIdx!,
        startOffset: last.endOffset! + 1, endOffset: last.endOffset!, startLine: line, endLine: line, startColumn: column, endColumn: column - 1,
    };
}

/** The width of the white space a line begins with. */
export function indentationOf(text: string, token: Token): number {
    const line = lineStart(token);
    let end = line;
    while (/[ \t\u00a0\ufeff]/.test(text[end] ?? '')) end++;
    return width(text.slice(line, end));
}

/** How far to the right a token stands. */
export function columnOf(text: string, token: Token): number {
    return width(text.slice(lineStart(token), token.startOffset));
}

function lineStart(token: Token): number {
    return token.startOffset - token.startColumn! + 1;
}

/** A tab reaches to the next multiple of four; a byte order mark has no width. */
function width(text: string): number {
    let width = 0;
    for (const character of text) {
        if (character === '\t') width += 4 - width % 4;
        else if (character !== '\ufeff') width++;
    }
    return width;
}
