import type { LangiumDocuments } from 'langium';
import type { FuzzyMatcher, WorkspaceSymbolProvider } from 'langium/lsp';
import type { WorkspaceSymbol, WorkspaceSymbolParams } from 'vscode-languageserver-protocol';
import * as ast from '../generated/ast.ts';
import type { CofferSharedServices } from '../coffer-services.ts';
import { isBuiltin } from '../workspace/builtin.ts';
import { symbolsOfFile } from './outline.ts';

/** Finds stocks, profiles, rooms, jobs, values and alternates by a few letters of their names, in every file of the house. */
export class CofferWorkspaceSymbols implements WorkspaceSymbolProvider {
    private readonly documents: LangiumDocuments;
    private readonly matcher: FuzzyMatcher;

    constructor(services: CofferSharedServices) {
        this.documents = services.workspace.LangiumDocuments;
        this.matcher = services.lsp.FuzzyMatcher;
    }

    getSymbols({ query }: WorkspaceSymbolParams): WorkspaceSymbol[] {
        return this.documents.all.filter(document => !isBuiltin(document.uri)).toArray().flatMap(document => {
            const file = document.parseResult.value;
            const uri = document.uri.toString();
            return (ast.isFile(file) ? symbolsOfFile(file) : [])
                .filter(({ name }) => this.matcher.match(query.toLowerCase(), name))
                .map(({ name, kind, detail, selectionRange: range }) => ({ name, kind, location: { uri, range }, ...detail && { containerName: detail } }));
        });
    }
}
