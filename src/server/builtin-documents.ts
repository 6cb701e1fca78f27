import type { Connection } from 'vscode-languageserver';
import { builtinText } from './file-system.ts';
import { addressIn, fieldsOf } from './fields.ts';
import { rulePageText } from './rule-page.ts';
import { BUILTIN_DOCUMENT, type BuiltinDocumentParams, type BuiltinDocumentResult } from './messages.ts';

/** Hands out the built-in vocabulary, where a definition leads, and the pages of rules, where the code of a finding does. */
export function answerBuiltinDocuments(connection: Connection): void {
    connection.onRequest(BUILTIN_DOCUMENT, (params: unknown): BuiltinDocumentResult => {
        const uri = addressIn(fieldsOf<BuiltinDocumentParams>(params).uri);
        return uri === undefined ? null : builtinText(uri) ?? rulePageText(uri) ?? null;
    });
}
