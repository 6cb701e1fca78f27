import { URI, UriUtils, type FileSystemProvider, type LangiumDocuments } from 'langium';
import { DefaultDocumentUpdateHandler } from 'langium/lsp';
import { DidChangeWatchedFilesNotification, FileChangeType, type DidChangeWatchedFilesParams, type FileEvent, type FileSystemWatcher } from 'vscode-languageserver';
import type { CofferSharedServices } from '../language/coffer-services.ts';
import { isHouseWide } from '../language/workspace/folders-above.ts';
import type { ImportGraph } from '../language/workspace/import-graph.ts';
import { isInside } from '../language/workspace/imports.ts';
import type { Tables } from '../language/workspace/tables.ts';
import type { CofferWorkspaceManager } from '../language/workspace/workspace-manager.ts';

/**
 * Files that change on disk. Within the folders that are open all of them count; above, in the repository, those alone that are read there:
 * what is imported, tables that are named, and what holds for a whole house. Anything else there is not looked at, as when the folders were opened.
 */
export class CofferFileChanges extends DefaultDocumentUpdateHandler {
    private readonly workspace: CofferWorkspaceManager;
    private readonly imports: ImportGraph;
    private readonly documents: LangiumDocuments;
    private readonly files: FileSystemProvider;
    private readonly tables: Tables;
    /** Whether the editor can watch a folder that it has not opened. */
    private watchesAnyFolder = false;
    /** Changes above are taken one after the other: each has to ask the disk first. */
    private last: Promise<void> = Promise.resolve();

    constructor(services: CofferSharedServices) {
        super(services);
        this.workspace = services.workspace.WorkspaceManager as CofferWorkspaceManager;
        this.imports = services.workspace.Imports;
        this.documents = services.workspace.LangiumDocuments;
        this.files = services.workspace.FileSystemProvider;
        this.tables = services.workspace.Tables;
        services.lsp.LanguageServer.onInitialize(({ capabilities }) => {
            this.watchesAnyFolder = capabilities.workspace?.didChangeWatchedFiles?.relativePatternSupport ?? false;
        });
    }

    /** The folders that are open at once; the repositories they lie in when these are known. */
    protected override registerFileWatcher(services: CofferSharedServices): void {
        super.registerFileWatcher(services);
        if (!this.watchesAnyFolder) return;
        void this.workspace.ready.then(() => {
            const above = new Set(this.workspace.above.map(String));
            const repositories = new Set(this.imports.folders.map(String).filter(folder => above.has(folder)));
            const watchers: FileSystemWatcher[] = [...repositories].map(baseUri => ({ globPattern: { baseUri, pattern: '**/*' } }));
            if (watchers.length > 0) return services.lsp.Connection?.client.register(DidChangeWatchedFilesNotification.type, { watchers });
        }).catch(() => { /* an editor that refuses tells of no change there */ });
    }

    override didChangeWatchedFiles({ changes }: DidChangeWatchedFilesParams): void {
        const { opened } = this.workspace;
        const isWithin = (uri: URI): boolean => isInside(uri, opened) || opened.some(folder => folder.toString() === uri.toString());
        const within = changes.filter(({ uri }) => isWithin(URI.parse(uri))), above = changes.filter(change => !within.includes(change));
        if (within.length > 0) super.didChangeWatchedFiles({ changes: within });
        if (above.length > 0) this.last = this.last.then(() => this.takeAbove(above)).catch(() => { /* said as far as it could be read */ });
    }

    private async takeAbove(changes: readonly FileEvent[]): Promise<void> {
        await this.workspace.ready;
        const deleted = changes.filter(({ type }) => type === FileChangeType.Deleted).map(({ uri }) => URI.parse(uri));
        const changed = changes.filter(({ type }) => type !== FileChangeType.Deleted).map(({ uri }) => URI.parse(uri));
        const read = (await Promise.all(changed.map(uri => this.readBecauseOf(uri)))).flat();
        const known = deleted.filter(uri => this.isTable(uri)
            || this.documents.all.some(document => document.uri.toString() === uri.toString() || isInside(document.uri, [uri])));
        if (read.length > 0 || known.length > 0) this.fireDocumentUpdate(read, known);
    }

    /** Whether a table that some file names is there, or in the folder that is there. */
    private isTable(uri: URI): boolean {
        return this.tables.all().some(table => table.toString() === uri.toString() || isInside(table, [uri]));
    }

    /** What is to be read, for the first time or again, where a file or a folder above has changed or is new. */
    private async readBecauseOf(uri: URI): Promise<readonly URI[]> {
        if (this.documents.hasDocument(uri) || this.isTable(uri)) return [uri];
        const missing = this.imports.missing().filter(each => each.toString() === uri.toString() || isInside(each, [uri]));
        if (missing.length > 0) return missing;
        const inOne = this.workspace.above.some(folder => folder.toString() === UriUtils.dirname(uri).toString());
        return inOne && await isHouseWide(uri, this.files) ? [uri] : [];
    }
}
