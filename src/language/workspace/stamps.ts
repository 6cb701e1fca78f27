import type { LangiumDocument } from 'langium';

/**
 * A number for each document that changes whenever the document, or anything it reaches, is parsed or linked again, or
 * the job that holds for it changes. Whoever keeps something made from a document compares the number it was made at.
 */
export class Stamps {
    private last = 0;
    private readonly stamps = new WeakMap<LangiumDocument, { root: object, stamp: number }>();

    bump(document: LangiumDocument): number {
        this.stamps.set(document, { root: document.parseResult.value, stamp: ++this.last });
        return this.last;
    }

    of(document: LangiumDocument): number {
        const known = this.stamps.get(document);
        return known?.root === document.parseResult.value ? known.stamp : this.bump(document);
    }
}
