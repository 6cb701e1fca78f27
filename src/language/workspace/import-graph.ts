import { UriUtils, type AstNode, type LangiumDocument, type LangiumDocuments, type LangiumSharedCoreServices, type URI } from 'langium';
import type * as ast from '../generated/ast.ts';
import { importOf, importsOf, isInside, type Import } from './imports.ts';
import { isBuiltin } from './builtin.ts';
import { ringsOf } from '../../plain/rings.ts';
import { atKey } from '../../plain/at-key.ts';

/** A ring is followed through so many files to show it. */
export const MOST_FOLLOWED = 100;

/**
 * Which file imports which. The edges are read off the trees, so there is nothing to keep up to date; a path to a file
 * that does not exist is an edge too, so that the file is noticed when it appears.
 */
export class ImportGraph {
    /** The folders that are open, or the repositories these lie in; imports may not leave them. None: anything goes. */
    folders: readonly URI[] = [];

    /** Files that are there and are not read since they would be too many, by address. */
    readonly leftOut = new Set<string>();

    private readonly documents: LangiumDocuments;
    private readonly affected = new WeakMap<ReadonlySet<string>, ReadonlySet<string>>();
    private readonly edges = new WeakMap<AstNode, { readonly folders: readonly URI[], readonly imports: readonly Import[] }>();
    /** By document the ring it lies on, where it lies on one: a number that all files of the ring have. */
    private rings: { readonly folders: readonly URI[], readonly of: ReadonlyMap<LangiumDocument, number> } | undefined;

    /** By name, without folders and ending, the files that may be imported. */
    private stems: { readonly folders: readonly URI[], readonly of: ReadonlyMap<string, readonly URI[]> } | undefined;

    constructor(services: LangiumSharedCoreServices) {
        this.documents = services.workspace.LangiumDocuments;
    }

    /** To be called whenever a document has been parsed, or is gone. */
    changed(): void {
        this.rings = undefined;
        this.stems = undefined;
    }

    /** The imports of a document that may be followed. */
    followed(document: LangiumDocument): readonly Import[] {
        const root = document.parseResult.value;
        let edges = this.edges.get(root);
        if (edges?.folders !== this.folders) {
            edges = { folders: this.folders, imports: importsOf(document).filter(i => isInside(i.uri, this.folders)) };
            this.edges.set(root, edges);
        }
        return edges.imports;
    }

    /** The document a `from` line brings names from; undefined where there is none or it may not be followed. */
    importOf(use: ast.Use): LangiumDocument | undefined {
        const found = importOf(use);
        return found && isInside(found.uri, this.folders) ? this.documents.getDocument(found.uri) : undefined;
    }

    /** The files that are imported somewhere and have not been read: there is none, or it cannot be read. */
    missing(): readonly URI[] {
        const missing = new Map(this.documents.all.toArray().flatMap(document => this.followed(document))
            .filter(({ uri }) => !this.documents.hasDocument(uri)).map(({ key, uri }) => [key, uri]));
        return [...missing.values()];
    }

    /** All files that some documents import, through any chain, by address. A document itself is among them if it lies on a ring. */
    reached(...from: readonly LangiumDocument[]): ReadonlySet<string> {
        const reached = new Set<string>();
        const todo = [...from];
        for (let next = todo.pop(); next; next = todo.pop()) {
            for (const { key, uri } of this.followed(next)) {
                if (reached.has(key)) continue;
                reached.add(key);
                const imported = this.documents.getDocument(uri);
                if (imported) todo.push(imported);
            }
        }
        return reached;
    }

    /** The documents that import any of the changed files, through any chain, by address. */
    affectedBy(changed: ReadonlySet<string>): ReadonlySet<string> {
        return atKey(this.affected, changed, () => this.findAffected(changed));
    }

    /** Whether an import of a document leads back to it. All rings are looked for at once: each file would go through all others. */
    closesRing(document: LangiumDocument, { uri }: Import): boolean {
        if (this.rings?.folders !== this.folders) this.rings = { folders: this.folders, of: ringsOf(this.documents.all, each => this.importedBy(each)) };
        const ring = this.rings.of.get(document), imported = this.documents.getDocument(uri);
        return ring !== undefined && imported !== undefined && this.rings.of.get(imported) === ring;
    }

    /** The shortest ring that an import closes: the files from the one imported back to the one that imports. Undefined where it is too long to show. */
    ring(document: LangiumDocument, first: Import): readonly URI[] | undefined {
        const goal = document.uri.toString();
        const cameFrom = new Map<string, { uri: URI, from: string | undefined }>([[first.key, { uri: first.uri, from: undefined }]]);
        for (const [key, { uri }] of cameFrom) {          // grows while it is gone through
            if (key === goal) {
                const chain: URI[] = [];
                for (let step = cameFrom.get(key); step; step = step.from === undefined ? undefined : cameFrom.get(step.from)) chain.unshift(step.uri);
                return chain;
            }
            if (cameFrom.size > MOST_FOLLOWED) return undefined;
            const imported = this.documents.getDocument(uri);
            for (const next of imported ? this.followed(imported) : []) {
                if (!cameFrom.has(next.key)) cameFrom.set(next.key, { uri: next.uri, from: key });
            }
        }
        return undefined;
    }

    /** The files that may be imported, by their names without folders and ending. */
    byStem(): ReadonlyMap<string, readonly URI[]> {
        if (this.stems?.folders === this.folders) return this.stems.of;
        const of = new Map<string, URI[]>();
        for (const { uri } of this.documents.all) {
            if (!isBuiltin(uri) && isInside(uri, this.folders)) atKey(of, stemOf(uri), () => []).push(uri);
        }
        this.stems = { folders: this.folders, of };
        return of;
    }

    private importedBy(document: LangiumDocument): LangiumDocument[] {
        return this.followed(document).flatMap(({ uri }) => this.documents.getDocument(uri) ?? []);
    }

    private findAffected(changed: ReadonlySet<string>): ReadonlySet<string> {
        const importers = new Map<string, string[]>();
        for (const document of this.documents.all) {
            const importer = document.uri.toString();
            for (const { key } of this.followed(document)) atKey(importers, key, () => []).push(importer);
        }
        const affected = new Set<string>();
        const todo = [...changed];
        for (let key = todo.pop(); key !== undefined; key = todo.pop()) {
            for (const importer of importers.get(key) ?? []) {
                if (affected.has(importer)) continue;
                affected.add(importer);
                todo.push(importer);
            }
        }
        return affected;
    }
}

/** What a file is called, without its ending. */
export function stemOf(uri: URI): string {
    return UriUtils.basename(uri).replace(/\.coffer$/, '');
}

/** A path to show and to write: from one file to another, beginning with `./` or `../`. */
export function pathBetween(from: URI, to: URI): string {
    const path = UriUtils.relative(UriUtils.dirname(from), to);
    return path.startsWith('.') ? path : './' + path;
}
