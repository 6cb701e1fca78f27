import { DefaultTokenBuilder, type GrammarAST } from 'langium';
import { quotedText } from './quoted.ts';
import type { Token, TokenType } from './token.ts';

/** Builds the tokens of the grammar; three of them need more than their spelling to be told from others. */
export class CofferTokenBuilder extends DefaultTokenBuilder {
    protected override buildKeywordToken(keyword: GrammarAST.Keyword, terminals: TokenType[], caseInsensitive: boolean): TokenType {
        const token = super.buildKeywordToken(keyword, terminals, caseInsensitive);
        if (keyword.value === 'x') return { ...byHand(token, timesSign, ['x', '×']), LONGER_ALT: undefined };
        // `+-` is what a telephone makes of ±; read as plus and minus it would be another length without a word.
        if (keyword.value === '+/-') token.PATTERN = /\+\/?[-\u2010-\u2013\u2212]/;
        if (keyword.value === '-') token.PATTERN = /[-\u2010-\u2013\u2212]/;
        return token;
    }

    protected override buildTerminalToken(terminal: GrammarAST.TerminalRule): TokenType {
        const token = super.buildTerminalToken(terminal);
        return terminal.name === 'STRING' ? byHand(token, (text, offset) => found(quotedText(text, offset)), ['"', '“']) : token;
    }
}

type Matcher = Extract<TokenType['PATTERN'], (text: string, offset: number, ...more: never[]) => unknown>;

function byHand(token: TokenType, pattern: Matcher, firstCharacters: string[]): TokenType {
    return { ...token, PATTERN: pattern, LINE_BREAKS: false, START_CHARS_HINT: firstCharacters };
}

/**
 * The operator x: it stands alone, or right behind a value and before another (`3/4"x3/4"`, `#8x2 1/2"`).
 * In any other place a name begins with it (`x3`).
 */
function timesSign(text: string, offset: number, before: Token[]): RegExpExecArray | null {
    const sign = text[offset];
    if (sign === '×') return found(sign);
    if (sign !== 'x') return null;
    const rest = text.slice(offset + 1, offset + 3);
    const alone = !/^(?:\w|-[A-Za-z_])/.test(rest);
    const last = before[before.length - 1];
    const tight = last?.endOffset === offset - 1 && !/^[A-Za-z_]/.test(last.image) && /^[\d#]/.test(rest);
    return alone || tight ? found(sign) : null;
}

function found(text: string | undefined): RegExpExecArray | null {
    return text === undefined ? null : [text] as unknown as RegExpExecArray;
}
