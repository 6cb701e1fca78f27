import { LangiumParser, type AstNode, type LangiumCoreServices, type ParseResult, type ParserOptions } from 'langium';
import { leftovers } from './leftovers.ts';
import { onePerMistake } from './one-per-mistake.ts';
import { CofferParserMessages, faultMessage } from './messages.ts';
import { createWorker } from './worker.ts';

/**
 * A parser that no file can stop. Whatever it is handed, it answers with a tree and with errors in the reader's words,
 * one a mistake. The parser that does the work is thrown away when it throws: its state is then not to be trusted, and
 * the next file must parse.
 */
export class CofferParser extends LangiumParser {
    private readonly services: LangiumCoreServices;
    private worker: LangiumParser | undefined;

    constructor(services: LangiumCoreServices) {
        super(services);
        this.services = services;
    }

    override parse<T extends AstNode = AstNode>(input: string, options?: ParserOptions): ParseResult<T> {
        this.startCounting();
        try {
            const result = this.work<T>(input, options);
            return onePerMistake(result, leftovers(result.value));
        } catch (error) {
            this.worker = undefined;
            this.startCounting();
            const nothing = this.work<T>('', options);
            return { ...nothing, lexerErrors: [{ offset: 0, line: 1, column: 1, length: 1, message: faultMessage(error) }] };
        }
    }

    private work<T extends AstNode>(input: string, options: ParserOptions | undefined): ParseResult<T> {
        this.worker ??= createWorker(this.services);
        return this.worker.parse<T>(input, options);
    }

    private startCounting(): void {
        const messages = this.services.parser.ParserErrorMessageProvider;
        if (messages instanceof CofferParserMessages) messages.startCounting();
    }
}
