import type { LangiumDocument } from 'langium';
import type * as ast from '../generated/ast.ts';
import type { CofferServices } from '../coffer-services.ts';

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

/** The job that holds for what a document says: that of the nearest folder upward that has one. */
export function jobOf(document: LangiumDocument): ast.Job | undefined {
    return servicesOf(document).shared.workspace.Jobs.nearest(document)[0];
}

/**
 * Changes whenever the document or anything it reaches (what it imports through any chain, the job that holds for it) is
 * parsed or linked again. What was worked out from a document holds as long as this stays the same.
 */
export function reachStamp(document: LangiumDocument): number {
    return servicesOf(document).shared.workspace.Stamps.of(document);
}
