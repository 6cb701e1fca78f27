import type { Connection, Diagnostic, DidChangeTextDocumentParams, TextDocumentContentChangeEvent } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { editsOf } from './follow.ts';
import { placesAfter, type Moved } from './places-after.ts';

/** What an editor tells of an open text: the text before it and after it, and where findings of any file are then. */
export interface TextEdited {
    readonly uri: string;
    readonly changes: readonly TextDocumentContentChangeEvent[];
    readonly before: string;
    readonly after: string;
    readonly moved: (file: string, diagnostic: Diagnostic) => Moved;
}

/** Hears of the edits of open texts before the server does, and works each out once for all who follow them. `connection`: the one to hand out. */
export class Edits {
    readonly connection: Connection;
    private readonly listeners: ((edited: TextEdited) => void)[] = [];

    /** `open`: the text of a file in the editor, while an edit is told the one before it; undefined where it is not open. */
    constructor(wire: Connection, open: (uri: string) => string | undefined) {
        this.connection = Object.create(wire, {
            onDidChangeTextDocument: { value: (listener: (params: DidChangeTextDocumentParams) => void) => wire.onDidChangeTextDocument(params => {
                const before = open(params.textDocument.uri);
                if (before !== undefined) this.tell(params, before);
                listener(params);
            }) },
        }) as Connection;
    }

    /** Those who listen are told in the order in which they came. */
    onEdit(listener: (edited: TextEdited) => void): void {
        this.listeners.push(listener);
    }

    private tell({ textDocument: { uri }, contentChanges: changes }: DidChangeTextDocumentParams, before: string): void {
        const document = TextDocument.create(uri, '', 0, before), edits = editsOf(document, changes), after = document.getText();
        const edited: TextEdited = { uri, changes, before, after, moved: placesAfter(uri, edits, after) };
        for (const listener of this.listeners) listener(edited);
    }
}
