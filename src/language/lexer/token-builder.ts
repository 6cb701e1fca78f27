import { DefaultTokenBuilder, type GrammarAST } from 'langium';
import type { TokenType } from 'chevrotain';

/**
 * Builds the tokens of the grammar, and gives `x` a pattern of its own: in `3/4"x3/4"` and `#8x2 1/2"` the x is the
 * operator, in `x3` a name begins with it.
 */
export class CofferTokenBuilder extends DefaultTokenBuilder {
    protected override buildKeywordToken(keyword: GrammarAST.Keyword, terminals: TokenType[], caseInsensitive: boolean): TokenType {
        const token = super.buildKeywordToken(keyword, terminals, caseInsensitive);
        if (keyword.value === 'x') {
            token.PATTERN = timesSign;
            token.LONGER_ALT = undefined;
            token.LINE_BREAKS = false;
            token.START_CHARS_HINT = ['x', '×'];
        }
        return token;
    }
}

const WORD_CHARACTER = /\w/;
const MARK_OR_DIGIT = /["'′″’”\d)]/;
const DIGIT = /[\d#]/;

/** Matches the operator x: alone, or tight between a mark (or digit) and a digit. */
function timesSign(text: string, offset: number): RegExpExecArray | null {
    const sign = text[offset];
    const next = text[offset + 1] ?? ' ';
    if (sign !== 'x' && sign !== '×') return null;
    const alone = sign === '×' || !WORD_CHARACTER.test(next) && !(next === '-' && /[A-Za-z_]/.test(text[offset + 2] ?? ''));
    const tight = MARK_OR_DIGIT.test(text[offset - 1] ?? ' ') && DIGIT.test(next);
    return alone || tight ? [sign] as unknown as RegExpExecArray : null;
}
