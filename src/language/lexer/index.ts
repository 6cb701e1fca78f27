export { CofferLexer } from './coffer-lexer.ts';
export { CofferTokenBuilder } from './token-builder.ts';
