import { DocumentState, URI, type FileSystemNode, type FileSystemProvider, type LangiumDocument } from 'langium';
import type { DefaultSharedModuleContext } from 'langium/lsp';
import type { Finding } from '../../src/findings/finding.ts';
import { languageFindings } from '../../src/language/findings/collect.ts';
import type * as ast from '../../src/language/generated/ast.ts';
import type { CofferServices, CofferSharedServices } from '../../src/language/coffer-services.ts';
import { createCofferServices } from '../../src/language/services.ts';
import type { Source } from '../../src/provenance/source.ts';

const ROOT = 'file:///house';

/** The language alone, or the server's services. */
type CreateServices = (context: DefaultSharedModuleContext) => { readonly shared: CofferSharedServices, readonly coffer: CofferServices };

/** A workspace of files in memory, opened, edited and looked at as the language server does it. */
export class TestWorkspace {
    readonly shared: CofferSharedServices;
    readonly coffer: CofferServices;
    private readonly files: MemoryFiles;

    private constructor(files: MemoryFiles, create: CreateServices) {
        this.files = files;
        ({ shared: this.shared, coffer: this.coffer } = create({ fileSystemProvider: () => files }));
    }

    /** Opens a folder with these files in it; paths are relative to it. */
    static async open(texts: Readonly<Record<string, string>>, findings = languageFindings): Promise<TestWorkspace> {
        return TestWorkspace.serve(texts, context => createCofferServices(context, { coffer: { checks: () => ({ findings }) } }));
    }

    /** The same as the language server puts it together, its checks included. */
    static async serve(texts: Readonly<Record<string, string>>, create: CreateServices): Promise<TestWorkspace> {
        return new TestWorkspace(filesOf(texts), create).opened();
    }

    private async opened(): Promise<this> {
        await this.shared.workspace.WorkspaceManager.initializeWorkspace([{ uri: ROOT, name: 'house' }]);
        return this;
    }

    document(path: string): LangiumDocument<ast.File> {
        const document = this.shared.workspace.LangiumDocuments.getDocument(uriOf(path));
        if (!document) throw new Error(`There is no ${path} in this workspace.`);
        return document as LangiumDocument<ast.File>;
    }

    has(path: string): boolean {
        return this.shared.workspace.LangiumDocuments.hasDocument(uriOf(path));
    }

    file(path: string): ast.File {
        return this.document(path).parseResult.value;
    }

    text(path: string): string {
        return this.files.texts.get(uriOf(path).path) ?? '';
    }

    /** Writes files, `undefined` to delete one (or a folder), and has everything rebuilt that depends on them. */
    async edit(texts: Readonly<Record<string, string | undefined>>): Promise<void> {
        const changed: URI[] = [], deleted: URI[] = [];
        for (const [path, text] of Object.entries(texts)) {
            const uri = uriOf(path);
            if (text === undefined) this.files.delete(uri.path);
            else this.files.texts.set(uri.path, text);
            (text === undefined ? deleted : changed).push(uri);
        }
        await this.shared.workspace.DocumentBuilder.update(changed, deleted);
    }

    /** What the last build found, as it is published. */
    published(path: string): readonly { readonly rule: string, readonly message: string, readonly line: number }[] {
        const document = this.document(path);
        if (document.state !== DocumentState.Validated) throw new Error(`${path} has not been checked.`);
        return (document.diagnostics ?? []).map(d => ({ rule: String(d.code), message: d.message, line: d.range.start.line }));
    }

    rules(path: string): readonly string[] {
        return this.published(path).map(each => each.rule);
    }

    findings(path: string): readonly Finding[] {
        return languageFindings(this.document(path));
    }

    /** The words at a place. */
    words(at: Source): string {
        const document = this.shared.workspace.LangiumDocuments.getDocument(URI.parse(at.uri));
        return document?.textDocument.getText(at.range) ?? '';
    }
}

export function uriOf(path: string): URI {
    return URI.parse(path.startsWith('/') ? `file://${path}` : `${ROOT}/${path}`);
}

function filesOf(texts: Readonly<Record<string, string>>): MemoryFiles {
    return new MemoryFiles(Object.entries(texts).map(([path, text]) => [uriOf(path).path, text]));
}

class MemoryFiles implements FileSystemProvider {
    readonly texts: Map<string, string>;

    constructor(texts: Iterable<[string, string]>) {
        this.texts = new Map(texts);
    }

    delete(path: string): void {
        for (const each of [...this.texts.keys()]) if (each === path || each.startsWith(path + '/')) this.texts.delete(each);
    }
    statSync(uri: URI): FileSystemNode {
        const isFile = this.texts.has(uri.path);
        const isDirectory = !isFile && [...this.texts.keys()].some(path => path.startsWith(uri.path + '/'));
        if (!isFile && !isDirectory) throw new Error(`There is nothing at ${uri.path}.`);
        return { isFile, isDirectory, uri };
    }
    existsSync(uri: URI): boolean { return this.texts.has(uri.path); }
    readFileSync(uri: URI): string {
        const text = this.texts.get(uri.path);
        if (text === undefined) throw new Error(`There is no file ${uri.path}.`);
        return text;
    }
    readBinarySync(uri: URI): Uint8Array { return new TextEncoder().encode(this.readFileSync(uri)); }
    readDirectorySync(uri: URI): FileSystemNode[] {
        const inside = [...this.texts.keys()].filter(path => path.startsWith(uri.path + '/')).map(path => path.slice(uri.path.length + 1).split('/')[0]!);
        return [...new Set(inside)].map(name => this.statSync(uri.with({ path: `${uri.path}/${name}` })));
    }
    async stat(uri: URI) { return this.statSync(uri); }
    async exists(uri: URI) { return this.existsSync(uri); }
    async readFile(uri: URI) { return this.readFileSync(uri); }
    async readBinary(uri: URI) { return this.readBinarySync(uri); }
    async readDirectory(uri: URI) { return this.readDirectorySync(uri); }
}
