/**
 * Messages between the extension and the server that the Language Server Protocol has not got. Both ends import this
 * file, so they cannot disagree.
 */
export const BUILTIN_DOCUMENT = 'cofferwright/builtinDocument';
/** Asks for the text of a document that exists only in the program, such as `builtin:///builtin.coffer`; null where there is none. */
export interface BuiltinDocumentParams { readonly uri: string }
export type BuiltinDocumentResult = string | null;
