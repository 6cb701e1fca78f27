/**
 * Messages between the extension and the server that the Language Server Protocol has not got. Both ends import this
 * file, so they cannot disagree.
 */
export const BUILTIN_DOCUMENT = 'cofferwright/builtinDocument';
/** Asks for the text of a document that exists only in the program, such as `builtin:///builtin.coffer`; null where there is none. */
export interface BuiltinDocumentParams { readonly uri: string }
export type BuiltinDocumentResult = string | null;

/**
 * A command of the editor's: shows the pieces of a room. An editor that has it lists it under `commands` in the
 * `initializationOptions`; then the line above a room leads there.
 */
export const SHOW_PIECES = 'cofferwright.showPieces';
export interface ShowPiecesParams { readonly uri: string; readonly room: string }
export interface InitializationOptions { readonly commands?: readonly string[] }
