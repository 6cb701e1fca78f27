import { URI } from 'langium';
import type { Connection, SelectionRange } from 'vscode-languageserver';
import { selectionAt } from '../language/features/selection.ts';
import type { CofferSharedServices } from '../language/coffer-services.ts';

/** Answers what a selection grows to; Langium has no such service. */
export function answerSelectionRanges(connection: Connection, { workspace }: CofferSharedServices): void {
    connection.onSelectionRanges(async ({ textDocument, positions }): Promise<SelectionRange[] | null> => {
        await workspace.WorkspaceManager.ready;
        const document = workspace.LangiumDocuments.getDocument(URI.parse(textDocument.uri));
        return document ? positions.map(position => selectionAt(document, position)) : null;
    });
}
