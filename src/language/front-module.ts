import type { DeepPartial, LangiumCoreServices, Module } from 'langium';
import { CofferLexer, CofferLexerMessages, CofferTokenBuilder } from './lexer/index.ts';
import { CofferParser, CofferParserMessages, CofferValueConverter } from './parser/index.ts';

/** The front of the language: from text to tree. services.ts injects it after the generated module. */
export const frontModule: Module<LangiumCoreServices, DeepPartial<LangiumCoreServices>> = {
    parser: {
        TokenBuilder: () => new CofferTokenBuilder(),
        Lexer: services => new CofferLexer(services),
        LexerErrorMessageProvider: () => new CofferLexerMessages(),
        LangiumParser: services => new CofferParser(services),
        ParserErrorMessageProvider: () => new CofferParserMessages(),
        ValueConverter: () => new CofferValueConverter(),
    },
};
