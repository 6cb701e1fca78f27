import type { LangiumDocuments } from 'langium';
import type { WorkspaceSymbolProvider } from 'langium/lsp';
import type { WorkspaceSymbol, WorkspaceSymbolParams } from 'vscode-languageserver-protocol';
import * as ast from '../generated/ast.ts';
import type { CofferSharedServices } from '../coffer-services.ts';
import { isBuiltin } from '../workspace/builtin.ts';
import { symbolsOfFile } from './outline.ts';

/** Finds stocks, profiles, rooms, jobs, values and alternates by a few letters of their names or titles, in every file of the house. */
export class CofferWorkspaceSymbols implements WorkspaceSymbolProvider {
    private readonly documents: LangiumDocuments;

    constructor(services: CofferSharedServices) {
        this.documents = services.workspace.LangiumDocuments;
    }

    getSymbols({ query }: WorkspaceSymbolParams): WorkspaceSymbol[] {
        return this.documents.all.filter(document => !isBuiltin(document.uri)).toArray().flatMap(document => {
            const file = document.parseResult.value;
            const uri = document.uri.toString();
            return (ast.isFile(file) ? symbolsOfFile(file) : [])
                .filter(({ name, detail }) => isAbbreviated(query, name) || (detail !== undefined && isAbbreviated(query, detail)))
                .map(({ name, kind, detail, selectionRange: range }) => ({ name, kind, location: { uri, range }, ...detail && { containerName: detail } }));
        });
    }
}

/**
 * Whether `query` is short for `text`: its letters and digits stand there in their order, the first at the beginning of a word. What
 * parts words counts in neither, so `box`, `gbox` and `groove b` find `groove-box`.
 */
function isAbbreviated(query: string, text: string): boolean {
    const wanted = [...query.toLowerCase()].filter(letter => WORDY.test(letter)).join('');
    if (wanted === '') return query.trim() === '';
    return text.toLowerCase().split(/[^\p{L}\p{N}]+/u).some((_word, index, words) => holdsInOrder(words.slice(index).join(''), wanted));
}

const WORDY = /[\p{L}\p{N}]/u;

function holdsInOrder(text: string, wanted: string): boolean {
    if (!text.startsWith(wanted[0]!)) return false;
    let next = 0;
    for (const letter of text) if (letter === wanted[next]) next++;
    return next >= wanted.length;
}
