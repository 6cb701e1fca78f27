import { URI, type LangiumDocument } from 'langium';
import type { CofferSharedServices } from '../coffer-services.ts';

/** Addresses of the files that some files import, through any chain, and of the jobs and the rates they stand under with what these import. */
export function madeFrom(uris: readonly string[], { workspace }: CofferSharedServices): string[] {
    const documentsAt = (addresses: readonly string[]): LangiumDocument[] =>
        addresses.flatMap(each => workspace.LangiumDocuments.getDocument(URI.parse(each)) ?? []);
    const documents = documentsAt(uris);
    const holders = [...new Set(documents.flatMap(document => workspace.Jobs.holdFor(document)))];
    return [...new Set([...workspace.Imports.reached(...documents), ...holders, ...workspace.Imports.reached(...documentsAt(holders))])];
}
