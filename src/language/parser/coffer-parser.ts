import { LangiumParser, type AstNode, type LangiumCoreServices, type ParseResult, type ParserOptions } from 'langium';
import { sayLeftovers } from './leftovers.ts';
import { onePerMistake } from './one-per-mistake.ts';
import { CofferParserMessages, faultMessage } from './messages.ts';
import { parseFor } from './worker.ts';

/**
 * A parser that no file can stop. Whatever it is handed, it answers with a tree and with errors in the reader's words,
 * one a mistake. Where the parser that does the work throws, there is nothing in the file, and the next one parses.
 */
export class CofferParser extends LangiumParser {
    constructor(private readonly services: LangiumCoreServices) {
        super(services);
    }

    override parse<T extends AstNode = AstNode>(input: string, options?: ParserOptions): ParseResult<T> {
        this.startCounting();
        try {
            const { result, leftovers } = parseFor<T>(this.services, input, options);
            return onePerMistake(result, sayLeftovers(leftovers));
        } catch (error) {
            this.startCounting();
            const { result: nothing } = parseFor<T>(this.services, '', options);
            return { ...nothing, lexerErrors: [{ offset: 0, line: 1, column: 1, length: 1, message: faultMessage(error) }] };
        }
    }

    private startCounting(): void {
        const messages = this.services.parser.ParserErrorMessageProvider;
        if (messages instanceof CofferParserMessages) messages.startCounting();
    }
}
