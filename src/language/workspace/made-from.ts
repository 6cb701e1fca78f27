import { URI } from 'langium';
import type { CofferSharedServices } from '../coffer-services.ts';

/** Addresses of the files that a file imports, through any chain, and of the job and the rates it stands under with what these import. */
export function madeFrom(uri: string, { workspace }: CofferSharedServices): string[] {
    const document = workspace.LangiumDocuments.getDocument(URI.parse(uri));
    if (!document) return [];
    const holders = workspace.Jobs.holdFor(document);
    const ofHolders = holders.flatMap(holder => {
        const holding = workspace.LangiumDocuments.getDocument(URI.parse(holder));
        return holding ? [...workspace.Imports.reached(holding)] : [];
    });
    return [...new Set([...workspace.Imports.reached(document), ...holders, ...ofHolders])];
}
