import { AbstractParserErrorMessageProvider } from 'langium';
import { sayMistake } from './say.ts';
import type { Token, TokenType } from '../lexer/token.ts';

/** A text with so many mistakes is something else than a job; to find them all would stop the editor. */
const MOST_MISTAKES = 500;

class TooManyMistakes extends Error {}

/** Why a file has no content, in words. */
export function faultMessage(error: unknown): string {
    if (error instanceof TooManyMistakes) return error.message;
    const detail = error instanceof Error ? error.message : String(error);
    return `This file cannot be read, and that is a fault of the program, not of the file: ${detail}`;
}

/**
 * Says a syntax error in the words of the trade. What is missing or too much shows in the two tokens around the place
 * where the parser stopped (say.ts); the tokens it could have gone on with are of no use to anybody.
 */
export class CofferParserMessages extends AbstractParserErrorMessageProvider {
    private mistakes = 0;

    /** To be called before each parse. */
    startCounting(): void {
        this.mistakes = 0;
    }

    override buildMismatchTokenMessage({ expected, actual, previous, ruleName }: {
        expected: TokenType;
        actual: Token;
        previous: Token;
        ruleName: string;
    }): string {
        return this.say(expected.name, actual, previous, ruleName);
    }

    override buildNotAllInputParsedMessage({ firstRedundant, ruleName }: { firstRedundant: Token, ruleName: string | undefined }): string {
        return this.say(undefined, firstRedundant, undefined, ruleName ?? 'File');
    }

    override buildNoViableAltMessage({ actual, previous, ruleName }: { actual: Token[], previous: Token, ruleName: string }): string {
        return this.say(undefined, actual[0]!, previous, ruleName);
    }

    override buildEarlyExitMessage({ actual, previous, ruleName }: { actual: Token[], previous: Token, ruleName: string }): string {
        return this.say(undefined, actual[0]!, previous, ruleName);
    }

    private say(expected: string | undefined, actual: Token, previous: Token | undefined, rule: string): string {
        const message = sayMistake({ expected, actual, previous: Number.isFinite(previous?.startOffset) ? previous : undefined, rule: rule.replace(/\u200b$/, '') });
        if (++this.mistakes > MOST_MISTAKES) {
            throw new TooManyMistakes(`This file has more than ${MOST_MISTAKES} mistakes; it does not look like a job. Nothing in it is read.`);
        }
        return message;
    }
}
