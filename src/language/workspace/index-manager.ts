import { AstUtils, CstUtils, DefaultIndexManager, isReference, stream, type AstNode, type Cancellation, type LangiumDocument, type ReferenceDescription, type Stream, type URI } from 'langium';
import type { CofferSharedServices } from '../coffer-services.ts';
import type { ImportGraph } from './import-graph.ts';
import type { Jobs } from './jobs.ts';
import type { Rooms } from './rooms.ts';

/**
 * Keeps the lists of jobs and rooms beside the index of names: all are made from what has just been parsed.
 * Uses of a name are looked for when somebody asks for them; a list of all of them, kept up to date at every keystroke,
 * would cost as much as linking. Which files a change concerns is read off the imports.
 */
export class CofferIndexManager extends DefaultIndexManager {
    private readonly jobs: Jobs;
    private readonly rooms: Rooms;
    private readonly imports: ImportGraph;

    constructor(services: CofferSharedServices) {
        super(services);
        this.jobs = services.workspace.Jobs;
        this.rooms = services.workspace.Rooms;
        this.imports = services.workspace.Imports;
    }

    override async updateContent(document: LangiumDocument, cancelToken?: Cancellation.CancellationToken): Promise<void> {
        this.jobs.update(document);
        this.rooms.update(document);
        this.imports.changed();
        await super.updateContent(document, cancelToken);
    }

    override remove(uri: URI): void {
        this.rooms.remove(uri.toString());
        this.jobs.remove(uri.toString());
        this.imports.changed();
        super.remove(uri);
    }

    override async updateReferences(): Promise<void> { /* see findAllReferences */ }

    override findAllReferences(target: AstNode, targetPath: string): Stream<ReferenceDescription> {
        const targetUri = AstUtils.getDocument(target).uri;
        return stream(this.documents.all.toArray().flatMap(document => document.references.flatMap(reference => {
            const { $refNode } = reference;
            if (!isReference(reference) || reference.ref !== target || !$refNode) return [];
            return [{
                sourceUri: document.uri, sourcePath: this.pathOf($refNode.astNode, document), targetUri, targetPath,
                segment: CstUtils.toDocumentSegment($refNode), local: targetUri.toString() === document.uri.toString(),
            }];
        })));
    }

    override isAffected(document: LangiumDocument, changed: Set<string>): boolean {
        return this.imports.affectedBy(changed).has(document.uri.toString());
    }

    private pathOf(node: AstNode, document: LangiumDocument): string {
        return this.serviceRegistry.getServices(document.uri).workspace.AstNodeLocator.getAstNodePath(node);
    }
}
