export { CofferLexer, type LineReport } from './coffer-lexer.ts';
export { CofferLexerMessages } from './messages.ts';
export { CofferTokenBuilder } from './token-builder.ts';
