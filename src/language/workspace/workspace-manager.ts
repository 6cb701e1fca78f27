import { DefaultWorkspaceManager, URI, type Cancellation, type LangiumDocument, type LangiumSharedCoreServices, type Stream } from 'langium';
import type { WorkspaceFolder } from 'vscode-languageserver-types';
import type { CofferSharedServices } from '../coffer-services.ts';
import { builtinDocument } from './builtin.ts';
import { foldersAbove, houseWideFiles, repositoryOf } from './folders-above.ts';
import type { ImportGraph } from './import-graph.ts';
import { isInside } from './imports.ts';
import { MOST_FILES } from './most-files.ts';

/**
 * Opens a workspace: the built-in library and every `.coffer` file of its folders, all of them checked. What belongs together with a
 * folder is the repository it lies in, as for the command line: its files may import from there, and a job above the folder holds.
 */
export class CofferWorkspaceManager extends DefaultWorkspaceManager {
    private readonly shared: LangiumSharedCoreServices;
    private readonly imports: ImportGraph;
    /** The folders that the editor has opened, which are read wholly. None: single files are open. */
    opened: readonly URI[] = [];
    /** Those above them, within their repositories, each once: what is said there for a house holds below too. */
    above: readonly URI[] = [];

    constructor(services: CofferSharedServices) {
        super(services);
        this.shared = services;
        this.imports = services.workspace.Imports;
        this.initialBuildOptions = { validation: true };
    }

    override async initializeWorkspace(asked: WorkspaceFolder[], cancelToken?: Cancellation.CancellationToken): Promise<void> {
        // whatever is asked for waits for this: an address that is none must not end it
        const folders = Array.isArray(asked) ? asked.filter(hasAddress) : [];
        this.opened = folders.map(folder => URI.parse(folder.uri));
        this.imports.folders = await Promise.all(this.opened.map(async folder => await repositoryOf(folder, this.fileSystemProvider) ?? folder));
        const above = this.opened.flatMap((folder, i) => foldersAbove(folder, this.imports.folders[i]).slice(1));
        this.above = [...new Map(above.filter(folder => !isInside(folder, this.opened)).map(folder => [folder.toString(), folder])).values()];
        await super.initializeWorkspace(folders, cancelToken);
    }

    /** Of what lies above the folders only what holds for their files too is read here; what they import from there is read with them. */
    protected override async loadAdditionalDocuments(_folders: WorkspaceFolder[], collect: (document: LangiumDocument) => void): Promise<void> {
        collect(builtinDocument(this.shared));
        for (const uri of await houseWideFiles(this.above, this.fileSystemProvider)) {
            const document = this.langiumDocuments.hasDocument(uri) ? undefined : await this.langiumDocuments.getOrCreateDocument(uri).catch(() => undefined);
            if (document) collect(document);
        }
    }

    /** Told where a folder holds more files than are read; the adapter tells the editor. */
    onTooMany: (there: number) => void = () => { /* nobody listens */ };

    /** A file that cannot be read is left out; it must not keep the others from opening. Nor must thousands of them. */
    protected override async loadWorkspaceDocuments(uris: Stream<URI>, collect: (document: LangiumDocument) => void): Promise<void> {
        const all = uris.toArray();
        if (all.length > MOST_FILES) this.onTooMany(all.length);
        await Promise.all(all.sort((a, b) => (a.path < b.path ? -1 : 1)).slice(0, MOST_FILES).map(async uri => {
            const document = await this.langiumDocuments.getOrCreateDocument(uri).catch(() => undefined);
            if (document) collect(document);
        }));
    }
}

/** Whether it is an address at all: somebody's editor sent it. */
function hasAddress(folder: WorkspaceFolder | null): boolean {
    if (typeof folder?.uri !== 'string') return false;
    try {
        return URI.parse(folder.uri).toString() !== '';
    } catch {
        return false;
    }
}
