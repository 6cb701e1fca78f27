import { createTokenInstance, type IToken, type TokenType } from 'chevrotain';

/** A token that nobody typed, of no width, right after another. */
export function impliedAfter(type: TokenType, last: IToken): IToken {
    const line = last.endLine!;
    const column = last.endColumn! + 1;
    return createTokenInstance(type, '', last.endOffset! + 1, last.endOffset!, line, line, column, column - 1);
}

/** The width of the white space a line begins with; a tab reaches to the next multiple of four. */
export function indentationOf(text: string, token: IToken): number {
    let width = 0;
    for (let at = token.startOffset - token.startColumn! + 1; ; at++) {
        const character = text[at];
        if (character === '\t') width += 4 - width % 4;
        else if (character === '\ufeff') continue;
        else if (character === ' ' || character === '\u00a0') width++;
        else return width;
    }
}
