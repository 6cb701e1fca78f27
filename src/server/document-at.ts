import { URI, type LangiumDocument } from 'langium';
import type { CofferSharedServices } from '../language/coffer-services.ts';

/** The document of an address; undefined where the server knows none. */
export function documentAt({ workspace }: CofferSharedServices, uri: string): LangiumDocument | undefined {
    return workspace.LangiumDocuments.getDocument(URI.parse(uri));
}
