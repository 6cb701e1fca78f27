import { DefaultWorkspaceManager, URI, type Cancellation, type LangiumDocument, type LangiumSharedCoreServices, type Stream } from 'langium';
import type { WorkspaceFolder } from 'vscode-languageserver-types';
import type { CofferSharedServices } from '../coffer-services.ts';
import { builtinDocument } from './builtin.ts';
import type { ImportGraph } from './import-graph.ts';

/** Opens a workspace: the built-in library and every `.coffer` file of its folders, all of them checked. */
export class CofferWorkspaceManager extends DefaultWorkspaceManager {
    private readonly shared: LangiumSharedCoreServices;
    private readonly imports: ImportGraph;

    constructor(services: CofferSharedServices) {
        super(services);
        this.shared = services;
        this.imports = services.workspace.Imports;
        this.initialBuildOptions = { validation: true };
    }

    override async initializeWorkspace(folders: WorkspaceFolder[], cancelToken?: Cancellation.CancellationToken): Promise<void> {
        this.imports.folders = folders.map(folder => URI.parse(folder.uri));
        await super.initializeWorkspace(folders, cancelToken);
    }

    protected override async loadAdditionalDocuments(_folders: WorkspaceFolder[], collect: (document: LangiumDocument) => void): Promise<void> {
        collect(builtinDocument(this.shared));
    }

    /** A file that cannot be read is left out; it must not keep the others from opening. */
    protected override async loadWorkspaceDocuments(uris: Stream<URI>, collect: (document: LangiumDocument) => void): Promise<void> {
        await Promise.all(uris.map(async uri => {
            const document = await this.langiumDocuments.getOrCreateDocument(uri).catch(() => undefined);
            if (document) collect(document);
        }));
    }
}
