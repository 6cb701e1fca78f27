import { UriUtils, type AstNode, type FileSystemProvider, type LangiumDocument, type LangiumSharedCoreServices, type URI } from 'langium';
import { kept } from '../../plain/kept.ts';
import { isBuiltin } from './builtin.ts';
import { near } from '../findings/near.ts';
import type { ImportGraph } from './import-graph.ts';
import { isInside, pathFrom } from './imports.ts';

/** Files that are read beside those of the language: plain tables, as an instrument exports them. */
export const TABLE_ENDING = /\.(csv|tsv|txt)$/i;

/** A table as it was read; without a text, why there is none. The same object as long as the file stays as it is. */
type Table = { readonly text: string } | { readonly missing: true; readonly alike: readonly string[] } | { readonly unreadable: string };

/** Where a text names a table. Only the words count, so that it is known before the tree is linked; one too many is read for nothing. */
const NAMED = /\breadings[ \t]+(["“]([^"”\r\n]{0,1000})["”])/g;

/** A table that a text names, and where: from one character of it up to another, with its quotes. */
interface Named { readonly uri: URI; readonly from: number; readonly to: number }

/**
 * The tables that files name, such as the readings of a survey: resolved as imports are, within the same folders. Each is read before the file
 * that names it is checked, and again when it has changed on the disk.
 */
export class Tables {
    private readonly imports: ImportGraph;
    private readonly files: FileSystemProvider;
    private readonly known = new Map<string, { readonly uri: URI; readonly table: Table }>();
    private readonly named = kept((root: AstNode): readonly Named[] => {
        const { uri, textDocument } = root.$document!;
        return [...textDocument.getText().matchAll(NAMED)].flatMap(({ 0: all, 1: words = '', 2: path = '', index }) => {
            const table = tableAt(uri, path), to = index + all.length;
            return table ? [{ uri: table, from: to - words.length, to }] : [];
        });
    });

    constructor(services: LangiumSharedCoreServices & { readonly workspace: { readonly Imports: ImportGraph } }) {
        this.imports = services.workspace.Imports;
        this.files = services.workspace.FileSystemProvider;
    }

    /** The tables that a document names and that may be read. */
    namedIn(document: LangiumDocument): readonly URI[] {
        return this.placesIn(document).map(({ uri }) => uri);
    }

    /** The same, with where it names them. */
    placesIn(document: LangiumDocument): readonly Named[] {
        const root = document.parseResult.value;
        return root.$document && !isBuiltin(root.$document.uri) ? this.named(root).filter(({ uri }) => isInside(uri, this.imports.folders)) : [];
    }

    /** What is known of a table; undefined where no file names it that was read. */
    at(uri: URI): Table | undefined {
        return this.known.get(uri.toString())?.table;
    }

    /** All that the tables say which a document names, or why they say nothing. */
    saidIn(document: LangiumDocument): string {
        return JSON.stringify(this.namedIn(document).map(uri => this.at(uri)));
    }

    /** All that are named, whether they are there or not. */
    all(): readonly URI[] {
        return [...this.known.values()].map(({ uri }) => uri);
    }

    /** Reads what these documents name and is not known yet. */
    async read(documents: readonly LangiumDocument[]): Promise<void> {
        const wanted = new Map(documents.flatMap(document => this.namedIn(document)).map(uri => [uri.toString(), uri]));
        await Promise.all([...wanted].map(async ([key, uri]) => {
            if (!this.known.has(key)) this.known.set(key, { uri, table: await this.readOne(uri) });
        }));
    }

    /** Forgets the tables that are, or lie in, what has changed: they are read anew with the next file that names them. Their addresses. */
    forget(changed: readonly URI[]): ReadonlySet<string> {
        const keys = changed.map(uri => uri.toString());
        const gone = this.known.size === 0 ? [] : [...this.known.keys()].filter(key => keys.some(each => key === each || key.startsWith(`${each}/`)));
        for (const key of gone) this.known.delete(key);
        return new Set(gone);
    }

    /** Whether a table that is known is no longer what was read of it, or is not read for another reason. */
    async hasChanged(uri: URI): Promise<boolean> {
        return JSON.stringify(await this.readOne(uri)) !== JSON.stringify(this.at(uri));
    }

    private async readOne(uri: URI): Promise<Table> {
        const node = await Promise.resolve(this.files.stat(uri)).catch(() => undefined);
        if (!node) return this.notThere(uri);
        if (!node.isFile) return { unreadable: 'is no file' };
        try {
            return { text: await this.files.readFile(uri) };
        } catch (error) {
            return { unreadable: reasonOf(error) };
        }
    }

    /** With the tables beside it whose names are nearly the same. */
    private async notThere(uri: URI): Promise<Table> {
        const beside = await Promise.resolve(this.files.readDirectory(UriUtils.dirname(uri))).catch(() => []);
        if (beside.some(each => each.uri.path === uri.path)) return { unreadable: 'is a link to something that is not there' };
        const names = beside.filter(({ isFile, uri: { path } }) => isFile && TABLE_ENDING.test(path)).map(each => UriUtils.basename(each.uri));
        const written = UriUtils.basename(uri), almost = near(written, names);
        return { missing: true, alike: almost.length > 0 || names.length > 1 ? [...almost] : names };
    }
}

/** The table that a path names, seen from the file it stands in; undefined where it can be none. */
export function tableAt(from: URI, path: string): URI | undefined {
    const leads = pathFrom(from, path);
    return 'uri' in leads && TABLE_ENDING.test(leads.uri.path) ? leads.uri : undefined;
}

/** A reader's own words where it has some; a system's error has a code and no words for a carpenter. */
function reasonOf(error: unknown): string {
    return error instanceof Error && !('code' in error) && /^is /.test(error.message) ? error.message : 'cannot be read';
}
