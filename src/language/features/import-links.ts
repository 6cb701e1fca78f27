import type { LangiumDocument } from 'langium';
import type { DocumentLinkProvider } from 'langium/lsp';
import type { DocumentLink } from 'vscode-languageserver-types';
import { sourceOfProperty } from '../types/place.ts';
import type { CofferServices } from '../coffer-services.ts';

/** Makes the paths of imports, and of tables, lead to their files. */
export class CofferImportLinks implements DocumentLinkProvider {
    constructor(private readonly services: CofferServices) {}

    getDocumentLinks(document: LangiumDocument): DocumentLink[] {
        const { Imports, LangiumDocuments, Tables } = this.services.shared.workspace;
        const imports = Imports.followed(document)
            .filter(({ uri }) => LangiumDocuments.hasDocument(uri))
            .map(({ use, uri }) => ({ range: sourceOfProperty(use, 'path').range, target: uri.toString() }));
        const { textDocument } = document;
        const tables = Tables.placesIn(document).flatMap(({ uri, from, to }) => {
            const table = Tables.at(uri);
            return table && !('missing' in table) ? [{ range: { start: textDocument.positionAt(from), end: textDocument.positionAt(to) }, target: uri.toString() }] : [];
        });
        return [...imports, ...tables];
    }
}
