import type { Connection } from 'vscode-languageserver';
import { builtinText } from './file-system.ts';
import { BUILTIN_DOCUMENT, type BuiltinDocumentParams, type BuiltinDocumentResult } from './messages.ts';

/** Hands out the built-in vocabulary, so that the editor can open it where a definition leads there. */
export function answerBuiltinDocuments(connection: Connection): void {
    connection.onRequest(BUILTIN_DOCUMENT, ({ uri }: BuiltinDocumentParams): BuiltinDocumentResult => builtinText(uri) ?? null);
}
