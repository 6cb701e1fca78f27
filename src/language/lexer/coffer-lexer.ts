import { DefaultLexer, type LexerResult, type TokenizeOptions } from 'langium';
import { markStatementEnds } from './line-ends.ts';

/** Reads tokens, and then the lines: which line ends mean something, and which braces were forgotten. */
export class CofferLexer extends DefaultLexer {
    override tokenize(text: string, options?: TokenizeOptions): LexerResult {
        const result = super.tokenize(text, options);
        const whole = options?.mode !== 'partial';
        return { ...result, tokens: markStatementEnds(result.tokens, text, this.tokenTypes, whole) };
    }
}
