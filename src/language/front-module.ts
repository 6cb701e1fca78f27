import type { DeepPartial, LangiumCoreServices, Module } from 'langium';
import { CofferLexer, CofferLexerMessages, CofferTokenBuilder } from './lexer/index.ts';
import { CofferParser, CofferParserMessages, CofferValueConverter } from './parser/index.ts';

// what follows from the grammar alone is the same for all who read files in this process, and takes its time to find out
const lexerMessages = new CofferLexerMessages();
const parserMessages = new CofferParserMessages();
let lexer: CofferLexer | undefined;

/** The front of the language: from text to tree. services.ts injects it after the generated module. */
export const frontModule: Module<LangiumCoreServices, DeepPartial<LangiumCoreServices>> = {
    parser: {
        TokenBuilder: () => new CofferTokenBuilder(),
        Lexer: services => lexer ??= new CofferLexer(services),
        LexerErrorMessageProvider: () => lexerMessages,
        LangiumParser: services => new CofferParser(services),
        ParserErrorMessageProvider: () => parserMessages,
        ValueConverter: () => new CofferValueConverter(),
    },
};
