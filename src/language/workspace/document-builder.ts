import { DefaultDocumentBuilder, DocumentState, interruptAndCheck, isOperationCancelled, type AstNode, type BuildOptions, type Cancellation, type FileSystemProvider, type LangiumDocument, type LangiumDocuments, type URI } from 'langium';
import type { CofferSharedServices } from '../coffer-services.ts';
import type { CofferDocumentFactory } from './document-factory.ts';
import { HintsOfOthers } from './hints-of-others.ts';
import type { ImportGraph } from './import-graph.ts';
import type { Jobs } from './jobs.ts';
import { MOST_READ } from './most-files.ts';
import type { Stamps } from './stamps.ts';
import type { Tables } from './tables.ts';

/**
 * Builds what has changed and everything that depends on it: the files that import it through any chain, and, for a job,
 * the files in its folder and below. Langium by itself looks one import far.
 */
export class CofferDocumentBuilder extends DefaultDocumentBuilder {
    private readonly imports: ImportGraph;
    private readonly jobs: Jobs;
    private readonly stamps: Stamps;
    private readonly tables: Tables;
    private readonly hints = new HintsOfOthers();
    private readonly documents: LangiumDocuments;
    private readonly files: FileSystemProvider;
    private readonly factory: CofferDocumentFactory;

    constructor(services: CofferSharedServices) {
        super(services);
        this.imports = services.workspace.Imports;
        this.jobs = services.workspace.Jobs;
        this.stamps = services.workspace.Stamps;
        this.tables = services.workspace.Tables;
        this.documents = services.workspace.LangiumDocuments;
        this.files = services.workspace.FileSystemProvider;
        this.factory = services.workspace.LangiumDocumentFactory as CofferDocumentFactory;
        this.updateBuildOptions = { validation: true };
    }

    /** Langium would also link again, at every edit anywhere, each file with an unknown name; here only what it imports can mend that. */
    protected override shouldRelink(document: LangiumDocument, changed: Set<string>): boolean {
        return this.indexManager.isAffected(document, changed);
    }

    /** A file that goes from the disk, alone or with its folder, while it is open in the editor is what the editor says it is. */
    override update(changed: URI[], deleted: URI[], cancelToken?: Cancellation.CancellationToken): Promise<void> {
        const gone = deleted.map(uri => uri.toString());
        const isGone = (uri: URI): boolean => gone.some(key => uri.toString() === key || uri.toString().startsWith(`${key}/`));
        const open = gone.length === 0 ? []
            : this.documents.all.map(({ uri }) => uri).filter(uri => isGone(uri) && this.textDocuments?.get(uri) !== undefined).toArray();
        let room = this.room();
        const isRead = (uri: URI): boolean => this.documents.hasDocument(uri) || this.textDocuments?.get(uri) !== undefined || room-- > 0;
        return super.update([...changed.filter(isRead), ...open, ...this.whoseTablesChanged([...changed, ...deleted])], deleted, cancelToken);
    }

    /** Files that name a table which has changed, or is gone: they are read again, and it with them. */
    private whoseTablesChanged(changed: readonly URI[]): URI[] {
        const tables = this.tables.forget(changed);
        if (tables.size === 0) return [];
        return this.documents.all.filter(document => this.tables.namedIn(document).some(uri => tables.has(uri.toString()))).map(({ uri }) => uri).toArray();
    }

    /** How many more files may be read. */
    private room(): number {
        return MOST_READ - this.documents.all.count();
    }

    override resetToState<T extends AstNode>(document: LangiumDocument<T>, state: DocumentState): void {
        super.resetToState(document, state);
        if (state < DocumentState.Validated) this.stamps.bump(document);
    }

    /** Told of what fails beside the documents themselves, in what is done after each phase; the adapter logs it. */
    onFault: (error: unknown) => void = () => { /* nobody listens */ };

    /** A wall around each document: one that fails in a phase goes on without its content, and says why; the others go on as they are. */
    protected override runCancelable(
        documents: LangiumDocument[], state: DocumentState, cancelToken: Cancellation.CancellationToken, callback: (document: LangiumDocument) => unknown,
    ): Promise<void> {
        return super.runCancelable(documents, state, cancelToken, async document => {
            try {
                await callback(document);
            } catch (error) {
                if (isOperationCancelled(error)) throw error;
                this.factory.giveUp(document, error);
                await callback(document);
            }
        });
    }

    /** So is one around everybody who waits for a phase: what fails there is no matter of the build. */
    protected override async notifyBuildPhase(documents: LangiumDocument[], state: DocumentState, cancelToken: Cancellation.CancellationToken): Promise<void> {
        const told = state === DocumentState.Validated ? this.withUntold(documents) : documents;
        if (told.length === 0) return;
        for (const listener of [...this.buildPhaseListeners.get(state)]) {
            await interruptAndCheck(cancelToken);
            await this.behindWall(() => listener(told, cancelToken));
        }
        if (state === DocumentState.Validated) this.untold.clear();
    }

    /** Checked documents that nobody could be told of, since the next change broke their build off at its very end. */
    private readonly untold = new Set<LangiumDocument>();

    private withUntold(documents: readonly LangiumDocument[]): LangiumDocument[] {
        for (const document of documents) this.untold.add(document);
        return [...this.untold].filter(document => document.state === DocumentState.Validated && this.documents.getDocument(document.uri) === document);
    }

    /**
     * A document that has come to a phase is told of, even where the next change breaks the build off just then: nobody
     * would tell of it later, and what is wrong with it would never be published.
     */
    protected override async notifyDocumentPhase(document: LangiumDocument, state: DocumentState, cancelToken: Cancellation.CancellationToken): Promise<void> {
        for (const listener of [...this.documentPhaseListeners.get(state)]) {
            await this.behindWall(() => listener(document, cancelToken)).catch((error: unknown) => { if (!isOperationCancelled(error)) throw error; });
        }
    }

    private async behindWall(work: () => unknown): Promise<void> {
        try {
            await work();
        } catch (error) {
            if (isOperationCancelled(error)) throw error;
            this.onFault(error);
        }
    }

    /** Parses first, since only then is it known what else has to be built. */
    protected override async buildDocuments(changed: LangiumDocument[], options: BuildOptions, cancelToken: Cancellation.CancellationToken): Promise<void> {
        this.prepareBuild(changed, options);
        await this.runCancelable(changed, DocumentState.Parsed, cancelToken, document => this.langiumDocumentFactory.update(document, cancelToken));
        const documents = await this.withImports(changed);
        await this.tables.read(documents);
        await this.runCancelable(documents, DocumentState.IndexedContent, cancelToken, document => this.indexManager.updateContent(document, cancelToken));
        for (const document of documents) this.hints.update(document);
        await super.buildDocuments([...documents, ...this.alsoToCheck(documents)], options, cancelToken);
    }

    /** The documents and, through any chain, the files they import that nobody has opened yet. */
    private async withImports(changed: readonly LangiumDocument[]): Promise<LangiumDocument[]> {
        const documents = [...changed], { leftOut } = this.imports;
        let room = this.room();
        for (const document of documents) {          // grows while it is gone through
            const unread = this.imports.followed(document).filter(({ uri }) => !this.documents.hasDocument(uri));
            const areFiles = await Promise.all(unread.map(({ uri }) => this.isFile(uri)));
            for (const [i, { uri }] of unread.entries()) {
                // one that is named twice has been read by then
                if (!areFiles[i] || this.documents.hasDocument(uri)) continue;
                const key = uri.toString();
                leftOut.delete(key);
                const found = room > 0 ? await this.read(uri) : undefined;
                if (room <= 0) leftOut.add(key);
                if (!found) continue;
                documents.push(found);
                room--;
            }
        }
        return documents;
    }

    /** A file that is not there, or cannot be read, is a missing import and stops nothing. */
    private async read(uri: URI): Promise<LangiumDocument | undefined> {
        return this.documents.getOrCreateDocument(uri).catch(() => undefined);
    }

    private async isFile(uri: URI): Promise<boolean> {
        return (await this.files.stat(uri).catch(() => undefined))?.isFile === true;
    }

    protected override cleanUpDeleted<T extends AstNode>(document: LangiumDocument<T>): void {
        this.hints.remove(document.uri.toString());
        super.cleanUpDeleted(document);
    }

    /** What stands under a job that was touched, and what is told of names and files that came or went. */
    private alsoToCheck(known: readonly LangiumDocument[]): LangiumDocument[] {
        const touched = this.jobs.takeTouched(), told = this.hints.takeChanged(this.imports, ({ uri }) => this.documents.hasDocument(uri));
        const others: LangiumDocument[] = [];
        const alreadyBuilt = new Set(known);
        for (const document of this.documents.all) {
            if (!touched(document.uri.toString()) && !told(document)) continue;
            if (document.state > DocumentState.IndexedReferences) this.resetToState(document, DocumentState.IndexedReferences);
            else this.stamps.bump(document);
            if (!alreadyBuilt.has(document)) others.push(document);
        }
        return others;
    }
}
