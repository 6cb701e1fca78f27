import type { AstNode, LangiumDocument, ParseResult } from 'langium';
import { CofferParser } from '../../src/language/parser/index.ts';
import { CofferLinker } from '../../src/language/scope/linker.ts';
import { BUILTIN_TEXT, isBuiltin } from '../../src/language/workspace/builtin.ts';

/**
 * The program parses the built-in library once, and links it once; tests open some thousand workspaces in a process, and spent most of their
 * time on it. In them the first parses and links it, and all look at the same tree, which nobody changes: what its words mean stands in it too,
 * whoever has found out. (A setup file of the tests.)
 */
const parse = CofferParser.prototype.parse, { link, unlink } = CofferLinker.prototype;
let first: ParseResult | undefined, links: LangiumDocument['references'] | undefined;

const isShared = (document: LangiumDocument): boolean => isBuiltin(document.uri) && document.parseResult.value === first?.value;

CofferParser.prototype.parse = function <T extends AstNode>(this: CofferParser, input: string, options?: Parameters<typeof parse>[1]): ParseResult<T> {
    if (input !== BUILTIN_TEXT || options !== undefined) return parse.call(this, input, options) as ParseResult<T>;
    return { ...first ??= parse.call(this, input) } as ParseResult<T>;
};

CofferLinker.prototype.link = async function (this: CofferLinker, document: LangiumDocument, token?: Parameters<typeof link>[1]): Promise<void> {
    if (isShared(document) && links) document.references.push(...links);
    else await link.call(this, document, token);
    if (isShared(document)) links ??= [...document.references];
};

CofferLinker.prototype.unlink = function (this: CofferLinker, document: LangiumDocument): void {
    if (isShared(document)) document.references = [];
    else unlink.call(this, document);
};

/** The library as the parser itself makes it, for whoever asks alone. */
export function parsedAnew(parser: CofferParser): ParseResult {
    return parse.call(parser, BUILTIN_TEXT);
}
