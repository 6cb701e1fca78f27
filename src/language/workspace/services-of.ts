import type { LangiumDocument } from 'langium';
import type { CofferServices } from '../services.ts';

const services = new WeakMap<LangiumDocument, CofferServices>();

/** A document knows the services it was made by, so that what is asked about it needs no second argument. */
export function servicesOf(document: LangiumDocument): CofferServices {
    const found = services.get(document);
    if (!found) throw new Error(`${document.uri.toString()} is not a document of a coffer workspace.`);
    return found;
}

export function belongsTo(document: LangiumDocument, owner: CofferServices): void {
    services.set(document, owner);
}
