import { URI, type LangiumDocument, type LangiumSharedCoreServices } from 'langium';
import builtin from '../builtin/builtin.coffer';
import type * as ast from '../generated/ast.ts';

/** The library that declares the words of the language. It can be opened and read like any other file, and not changed. */
export const BUILTIN_URI = URI.parse('builtin:///builtin.coffer');
export const BUILTIN_TEXT: string = builtin;

export function isBuiltin(uri: URI): boolean {
    return uri.scheme === BUILTIN_URI.scheme;
}

/** The built-in library as a document, parsed when it is first asked for. */
export function builtinDocument(shared: LangiumSharedCoreServices): LangiumDocument<ast.File> {
    const documents = shared.workspace.LangiumDocuments;
    return (documents.getDocument(BUILTIN_URI) ?? documents.createDocument(BUILTIN_URI, BUILTIN_TEXT)) as LangiumDocument<ast.File>;
}
