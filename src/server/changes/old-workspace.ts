import { Cancellation, DocumentState, type LangiumDocument, type URI } from 'langium';
import type { StatedFile } from '../../changes/model.ts';
import type { FileContent } from '../../job/file.ts';
import { createCofferServices } from '../../language/services.ts';
import { readFile } from '../../language/read-file.ts';
import { statedFiles } from '../../language/stated-files.ts';
import { isBuiltin } from '../../language/workspace/builtin.ts';
import { madeFrom } from '../../language/workspace/made-from.ts';
import { saysTheSame, type StateOfFiles } from '../../language/workspace/same-behind.ts';
import type { FilesThere } from '../../pages/rooms.ts';
import { documentAt } from '../document-at.ts';
import { breath } from '../breath.ts';
import type { OldFiles } from './old-files.ts';

/** What is known of the state of now, to be taken where an earlier one says the same. */
interface Now extends StateOfFiles { content(uri: string): FileContent | undefined }

/** An earlier state of a folder as a workspace of its own: parsed and linked once, a file after the other, while nobody waits for anything else. */
export class OldWorkspace implements FilesThere, StateOfFiles {
    private readonly shared: ReturnType<typeof createCofferServices>['shared'];
    private opened: Promise<void> | undefined;
    /** Contents of the state of now that hold then too, by address; looked for anew whenever that may have changed. */
    private same = new Map<string, FileContent>();

    constructor(private readonly top: URI, private readonly files: OldFiles) {
        ({ shared: this.shared } = createCofferServices({ fileSystemProvider: () => files }));
    }

    /** Reads files, and what they import. `goOn`: false as soon as it is to be left; then it is gone on with when it is asked for again. */
    async read(uris: readonly URI[], goOn: () => boolean): Promise<void> {
        const { workspace } = this.shared;
        this.opened ??= workspace.WorkspaceManager.initializeWorkspace([]);
        await this.opened;
        workspace.Imports.folders = [this.top];
        await this.files.fetch(uris, goOn);
        for (const uri of uris) {
            if (!goOn()) return;
            if (this.files.textOf(uri) === undefined || workspace.LangiumDocuments.hasDocument(uri)) continue;
            await workspace.LangiumDocuments.getOrCreateDocument(uri);
            await breath();
        }
        const open = workspace.LangiumDocuments.all.toArray().filter(({ state }) => state < DocumentState.IndexedReferences);
        // with a token it lets others in between two files
        if (goOn() && open.length > 0) await workspace.DocumentBuilder.build(open, { validation: false }, new Cancellation.CancellationTokenSource().token);
    }

    /** Has what says the same now be what it is now, so that nothing of it is worked out twice. */
    matchWith(now: Now): void {
        this.same = new Map(this.all().flatMap(uri => {
            const content = saysTheSame(uri, this, now) ? now.content(uri) : undefined;
            return content ? [[uri, content]] : [];
        }));
    }

    all(): readonly string[] {
        return this.documents().map(({ uri }) => uri.toString()).sort();
    }

    content(uri: string): FileContent | undefined {
        const known = this.same.get(uri), document = known ? undefined : this.document(uri);
        return known ?? (document && readFile(document));
    }

    isSameNow(uri: string): boolean {
        return this.same.has(uri);
    }

    reached(uri: string): readonly string[] {
        return this.madeFrom(uri);
    }

    madeFrom(uri: string): readonly string[] {
        return madeFrom([uri], this.shared);
    }

    textOf(uri: string): string | undefined {
        return this.document(uri)?.textDocument.getText();
    }

    /** What files say. */
    stated(uris: readonly string[], nameOf: (uri: string) => string): readonly StatedFile[] {
        return statedFiles(uris.flatMap(uri => this.document(uri) ?? []), this.shared.workspace.Tables, nameOf);
    }

    tablesOf(uri: string): string {
        const document = this.document(uri);
        return document ? this.shared.workspace.Tables.saidIn(document) : '';
    }

    document(uri: string): LangiumDocument | undefined {
        const document = documentAt(this.shared, uri);
        return document && !isBuiltin(document.uri) ? document : undefined;
    }

    private documents(): LangiumDocument[] {
        return this.shared.workspace.LangiumDocuments.all.toArray().filter(({ uri }) => !isBuiltin(uri));
    }
}
