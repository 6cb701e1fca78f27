import type { LangiumDocument } from 'langium';
import type { DocumentLinkProvider } from 'langium/lsp';
import type { DocumentLink } from 'vscode-languageserver-types';
import { sourceOfProperty } from '../types/place.ts';
import type { CofferServices } from '../coffer-services.ts';

/** Makes the paths of imports lead to their files. */
export class CofferImportLinks implements DocumentLinkProvider {
    constructor(private readonly services: CofferServices) {}

    getDocumentLinks(document: LangiumDocument): DocumentLink[] {
        const { Imports, LangiumDocuments } = this.services.shared.workspace;
        return Imports.followed(document)
            .filter(({ uri }) => LangiumDocuments.hasDocument(uri))
            .map(({ use, uri }) => ({ range: sourceOfProperty(use, 'path').range, target: uri.toString() }));
    }
}
