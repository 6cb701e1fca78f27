import { DocumentState, URI, type LangiumDocument } from 'langium';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { readFile } from '../../src/language/read-file.ts';
import type { CofferServices, CofferSharedServices } from '../../src/language/coffer-services.ts';
import { createCofferServices } from '../../src/language/services.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import type { MadeFile } from './made-house.ts';

/** A workspace in memory, checked as the editor checks it, with a way to type into it. */
export class Workbench {
    readonly shared: CofferSharedServices;
    readonly coffer: CofferServices;

    constructor() {
        ({
            shared: this.shared, coffer: this.coffer,
        } = createCofferServices(undefined, { coffer: { checks: () => ({ findings: document => inspect(readFile(document)).findings }) } }));
    }

    async open(files: readonly MadeFile[], validation = true): Promise<void> {
        await this.shared.workspace.WorkspaceManager.initializeWorkspace([]);
        const documents = files.map(({ path, text }) => this.shared.workspace.LangiumDocumentFactory.fromString(text, URI.file(path)));
        for (const document of documents) this.shared.workspace.LangiumDocuments.addDocument(document);
        await this.shared.workspace.DocumentBuilder.build(documents, { validation });
    }

    /** From the changed text to the findings, of this file and of all that depends on it. Milliseconds. */
    async edit(path: string, text: string): Promise<number> {
        const uri = URI.file(path);
        const document = this.document(path);
        const began = performance.now();
        this.shared.workspace.TextDocuments!.set(TextDocument.create(uri.toString(), 'coffer', document.textDocument.version + 1, text));
        await this.shared.workspace.DocumentBuilder.update([uri], []);
        if (this.document(path).state !== DocumentState.Validated) throw new Error(`${path} was not checked`);
        return performance.now() - began;
    }

    /** The same text through the parser and the linker alone, as Langium does it, in a document of its own. Milliseconds. */
    async parseAndLink(path: string, text: string): Promise<number> {
        // beside the house: a second room of the same name in it would have the whole house looked at again
        const uri = URI.file(path.replace('/rooms/', '/bare/').replace('.coffer', '.bare.coffer'));
        const began = performance.now();
        const document = this.shared.workspace.LangiumDocumentFactory.fromString(text, uri);
        this.shared.workspace.LangiumDocuments.addDocument(document);
        await this.shared.workspace.DocumentBuilder.build([document], { validation: false });
        const took = performance.now() - began;
        if (document.references.some(reference => reference.error !== undefined)) throw new Error(`${path} did not link`);
        this.shared.workspace.LangiumDocuments.deleteDocument(uri);
        this.shared.workspace.IndexManager.remove(uri);
        return took;
    }

    document(path: string): LangiumDocument {
        const document = this.shared.workspace.LangiumDocuments.getDocument(URI.file(path));
        if (!document) throw new Error(`no ${path}`);
        return document;
    }

    findings(path: string): number {
        return inspect(readFile(this.document(path))).findings.length;
    }
}
