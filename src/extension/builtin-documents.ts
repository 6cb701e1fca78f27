import * as vscode from 'vscode';
import { BUILTIN_DOCUMENT, type BuiltinDocumentParams, type BuiltinDocumentResult } from '../server/messages.ts';

/** Asks the server; undefined where it does not answer. */
type Ask = <Result>(method: string, params: object) => Promise<Result | undefined>;

/** Opens the built-in vocabulary, where "Go to Definition" leads from every property and trade word, and the pages of rules. Read only. */
export class BuiltinDocuments implements vscode.TextDocumentContentProvider {
    static readonly scheme = 'builtin';
    static readonly vocabulary = vscode.Uri.from({ scheme: BuiltinDocuments.scheme, path: '/builtin.coffer' });

    constructor(private readonly ask: Ask) {}

    async provideTextDocumentContent(uri: vscode.Uri): Promise<string> {
        const params: BuiltinDocumentParams = { uri: uri.toString() };
        return await this.ask<BuiltinDocumentResult>(BUILTIN_DOCUMENT, params) ?? '';
    }
}
