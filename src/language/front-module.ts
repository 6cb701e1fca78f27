import type { DeepPartial, LangiumCoreServices, Module } from 'langium';
import { CofferLexer, CofferTokenBuilder } from './lexer/index.ts';

/** The front of the language: from text to tree. services.ts injects it after the generated module. */
export const frontModule: Module<LangiumCoreServices, DeepPartial<LangiumCoreServices>> = {
    parser: {
        TokenBuilder: () => new CofferTokenBuilder(),
        Lexer: services => new CofferLexer(services),
    },
};
