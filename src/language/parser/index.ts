export { CofferParser } from './coffer-parser.ts';
export { CofferParserMessages } from './messages.ts';
export { CofferValueConverter } from './value-converter.ts';
