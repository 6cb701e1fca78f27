import type { LexerResult } from 'langium';
import { VALUES } from '../grammar-words.ts';
import { plainValue } from '../lexer/pasted.ts';
import { isClosedText, unquoted } from '../lexer/quoted.ts';
import { isClose, isEnd, isOpen, type Token } from '../lexer/token.ts';

/** A word, a sign or a comment, as it will be printed. */
export interface Piece {
    readonly text: string;
    /** The name of its token: of a terminal, or the keyword itself. */
    readonly kind: string;
    readonly offset: number;
    readonly end: number;
    /** Where it stood: lines and columns from one. */
    readonly line: number;
    readonly column: number;
    readonly endLine: number;
    /** True where a statement begins with it. */
    readonly begins: boolean;
    /** For a comment: true where no statement is under way. */
    readonly between: boolean;
}

/** All that a text holds besides white space, in order. */
export function piecesOf({ tokens, hidden }: LexerResult): Piece[] {
    const pieces: Piece[] = [];
    let taken = 0;
    let begins = true;
    for (const token of tokens) {
        if (isEnd(token)) { begins = true; continue; }
        while (taken < hidden.length && hidden[taken]!.startOffset < token.startOffset) pieces.push(pieceOf(hidden[taken++]!, false, begins || isClose(token)));
        pieces.push(pieceOf(token, begins, false));
        begins = isOpen(token) || isClose(token);
    }
    return [...pieces, ...hidden.slice(taken).map(comment => pieceOf(comment, false, true))];
}

export function isComment({ kind }: Piece): boolean {
    return kind === 'SL_COMMENT' || kind === 'ML_COMMENT';
}

function pieceOf(token: Token, begins: boolean, between: boolean): Piece {
    const { startOffset, endOffset, startLine, endLine, startColumn, tokenType: { name } } = token;
    return {
        text: printed(token), kind: name === '+/-' ? '±' : name, offset: startOffset, end: endOffset! + 1,
        line: startLine!, column: startColumn!, endLine: endLine!, begins, between,
    };
}

/** What was pasted is printed as it is typed. */
function printed({ image, tokenType: { name } }: Token): string {
    if (VALUES.has(name) && name !== 'STRING') return plainValue(image);
    if (name === '+/-') return '±';
    if (name === 'STRING' && image.startsWith('“') && isClosedText(image)) return `"${unquoted(image).replace(/\\/g, '\\\\')}"`;
    return name === 'SL_COMMENT' ? image.trimEnd() : image;
}
