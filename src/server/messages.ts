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
export interface InitializationOptions { readonly commands?: readonly string[]; readonly readsFiles?: boolean }

/**
 * Questions of the server to the editor about files that are not on the server's disk. An editor that answers them says
 * `readsFiles` in its `initializationOptions`. null: there is none, or it cannot be read.
 */
export const FILE_KIND = 'cofferwright/fileKind', READ_FILE = 'cofferwright/readFile', LIST_FOLDER = 'cofferwright/listFolder';
export interface FileParams { readonly uri: string }
export type FileKindResult = 'file' | 'folder' | null;
export type ReadFileResult = string | null;
export type ListFolderResult = readonly { readonly uri: string; readonly kind: 'file' | 'folder' }[] | null;

/** Asks which files are of one job with a file: what it imports and what imports it, through any chain, itself among them. */
export const FILES_OF_JOB = 'cofferwright/filesOfJob';
export interface FilesOfJobParams { readonly uri: string }
export type FilesOfJobResult = readonly string[];
