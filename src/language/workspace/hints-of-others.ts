import type { LangiumDocument } from 'langium';
import { namesOf } from '../scope/names.ts';
import type { ImportGraph } from './import-graph.ts';

/**
 * A name that leads nowhere is told with the files that declare it, imported or not, and a missing file with those that are called
 * nearly so. So what other files declare, and which there are, changes what such a file is told.
 */
export class HintsOfOthers {
    private readonly offered = new Map<string, ReadonlySet<string>>();
    /** Names that came or went since somebody last asked, and whether files did. */
    private names = new Set<string>();
    private files = false;

    /** Called whenever a document has been parsed. */
    update(document: LangiumDocument): void {
        const key = document.uri.toString(), before = this.offered.get(key), now = new Set(namesOf(document).keys());
        this.offered.set(key, now);
        this.files ||= before === undefined;
        for (const name of now) if (!before?.has(name)) this.names.add(name);
        for (const name of before ?? []) if (!now.has(name)) this.names.add(name);
    }

    /** Called when a document is gone. */
    remove(key: string): void {
        for (const name of this.offered.get(key) ?? []) this.names.add(name);
        this.files = this.offered.delete(key) || this.files;
    }

    /** True for documents that are told of what has changed: they have to be checked again. */
    takeChanged(imports: ImportGraph, isThere: (document: { uri: LangiumDocument['uri'] }) => boolean): (document: LangiumDocument) => boolean {
        const { names, files } = this;
        this.names = new Set();
        this.files = false;
        return document => names.size > 0 && document.references.some(({ error, $refText }) => error !== undefined && names.has($refText))
            || files && imports.followed(document).some(one => !isThere(one));
    }
}
