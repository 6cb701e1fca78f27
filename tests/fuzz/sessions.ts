import { PassThrough } from 'node:stream';
import fc from 'fast-check';
import type { FileSystemNode, FileSystemProvider, URI } from 'langium';
import { CancellationTokenSource, createMessageConnection, StreamMessageReader, StreamMessageWriter, type MessageConnection } from 'vscode-jsonrpc/node';
import { createConnection, ProposedFeatures, type Diagnostic, type PublishDiagnosticsParams } from 'vscode-languageserver/node';
import { serve } from '../../src/server/serve.ts';
import { createServerServices } from '../../src/server/services.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { Broken } from '../hostile/within.ts';
import { inputs, textOf, type Input } from './mutations.ts';
import type { Corpus } from './texts.ts';

/** What an editor does: one thing after another, not waiting for answers unless it says so. */
type Act =
    | { readonly does: 'open' | 'change' | 'stale' | 'write'; readonly file: number; readonly input: Input }
    | { readonly does: 'close' | 'delete'; readonly file: number }
    | { readonly does: 'ask'; readonly file: number; readonly what: number; readonly line: number; readonly character: number; readonly cancel: boolean }
    | { readonly does: 'wait' };
export interface Session { readonly corpus: Corpus; readonly acts: readonly Act[] }

export function sessions(corpus: Corpus): fc.Arbitrary<Session> {
    const file = fc.nat(Object.keys(corpus.house).length), input = inputs(corpus.seeds.length);
    const act: fc.Arbitrary<Act> = fc.oneof(
        { weight: 3, arbitrary: fc.record({ does: fc.constantFrom('open' as const, 'write' as const), file, input }) },
        { weight: 4, arbitrary: fc.record({ does: fc.constantFrom('change' as const, 'change' as const, 'stale' as const), file, input }) },
        { weight: 1, arbitrary: fc.record({ does: fc.constantFrom('close' as const, 'delete' as const), file }) },
        { weight: 5, arbitrary: fc.record({ does: fc.constant('ask' as const), file, what: fc.nat(QUESTIONS.length - 1), line: fc.nat(60), character: fc.nat(60), cancel: fc.boolean() }) },
        { weight: 1, arbitrary: fc.constant({ does: 'wait' as const }) },
    );
    return fc.array(act, { minLength: 4, maxLength: 30 }).map(acts => ({ acts, get corpus() { return corpus; }, toJSON: () => ({ acts }) }));
}

const EVERYWHERE = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };
const QUESTIONS: readonly (readonly [string, (at: { line: number; character: number }) => object])[] = [
    ['textDocument/hover', position => ({ position })], ['textDocument/completion', position => ({ position })], ['textDocument/definition', position => ({ position })],
    ['textDocument/references', position => ({ position, context: { includeDeclaration: true } })], ['textDocument/prepareRename', position => ({ position })], ['textDocument/rename', position => ({ position, newName: 'other' })],
    ['textDocument/signatureHelp', position => ({ position })], ['textDocument/documentHighlight', position => ({ position })], ['textDocument/selectionRange', position => ({ positions: [position] })],
    ['textDocument/documentSymbol', () => ({})], ['textDocument/foldingRange', () => ({})], ['textDocument/formatting', () => ({ options: { tabSize: 2, insertSpaces: true } })],
    ['textDocument/inlayHint', () => ({ range: EVERYWHERE })], ['textDocument/codeLens', () => ({})], ['textDocument/semanticTokens/full', () => ({})], ['textDocument/documentLink', () => ({})],
    ['textDocument/codeAction', () => ({ range: EVERYWHERE, context: { diagnostics: [] } })], ['workspace/symbol', () => ({ query: 'a' })],
];
/** Far longer than anything takes, on a machine that does a lot besides. */
const PATIENCE_MS = 60_000;
/** Cancelled, changed meanwhile, no such document (any more), a name that cannot be renamed so. */
const FAIR = new Set([-32800, -32801, -32802, -32803]);

/** Throws `Broken` where a question is not answered, or the server does not come to say of each file what a server says that has known only the last texts. */
export async function playSession({ corpus, acts }: Session): Promise<void> {
    const files = new Map(Object.entries(corpus.house)), names = [...files.keys(), 'guest.coffer'];
    const open = new Map<string, { version: number; text: string }>();
    const [toServer, toEditor] = [new PassThrough(), new PassThrough()];
    const server = createConnection(ProposedFeatures.all, new StreamMessageReader(toServer), new StreamMessageWriter(toEditor));
    serve(server, new MapFiles(files), () => []);
    const editor = createMessageConnection(new StreamMessageReader(toEditor), new StreamMessageWriter(toServer));
    const published = new Map<string, Diagnostic[]>(), logged: string[] = [], answers: Promise<void>[] = [];
    editor.onNotification('textDocument/publishDiagnostics', ({ uri, diagnostics }: PublishDiagnosticsParams) => { published.set(uri, diagnostics); });
    editor.onNotification('window/logMessage', ({ message }: { message: string }) => { logged.push(message); });
    editor.onRequest(() => null);
    editor.listen();
    try {
        await answered(editor, 'initialize', { processId: null, rootUri: null, capabilities: {}, workspaceFolders: [{ uri: ROOT, name: 'house' }] }, new CancellationTokenSource());
        await editor.sendNotification('initialized', {});
        for (const act of acts) {
            if (act.does === 'wait') { await Promise.all(answers); continue; }
            await perform(act, names[act.file]!);
        }
        await Promise.all(answers);
        await agrees();
        await answered(editor, 'shutdown', {}, new CancellationTokenSource());
        if (logged.length > 0) throw new Broken(`The server logs: ${logged[0]!}`);
    } finally {
        editor.dispose();
        server.dispose();
    }

    async function perform(act: Exclude<Act, { does: 'wait' }>, name: string): Promise<void> {
        const uri = `${ROOT}/${name}`, known = open.get(name);
        const notify = (method: string, params: object): Promise<void> => editor.sendNotification(method, params);
        switch (act.does) {
            case 'open': {
                if (known) return;
                const given = { version: 1, text: textOf(act.input, corpus.seeds) };
                open.set(name, given);
                return notify('textDocument/didOpen', { textDocument: { uri, languageId: 'coffer', ...given } });
            }
            case 'change': case 'stale': {
                if (!known) return;
                known.text = textOf(act.input, corpus.seeds);
                if (act.does === 'change') known.version++;
                return notify('textDocument/didChange', { textDocument: { uri, version: known.version }, contentChanges: [{ text: known.text }] });
            }
            case 'close':
                if (!known) return;
                open.delete(name);
                return notify('textDocument/didClose', { textDocument: { uri } });
            case 'write':
                files.set(name, textOf(act.input, corpus.seeds));
                return notify('workspace/didChangeWatchedFiles', { changes: [{ uri, type: 2 }] });
            case 'delete':
                if (!files.delete(name)) return;
                return notify('workspace/didChangeWatchedFiles', { changes: [{ uri, type: 3 }] });
            case 'ask': {
                const [method, params] = QUESTIONS[act.what]!, source = new CancellationTokenSource();
                answers.push(answered(editor, method, { textDocument: { uri }, ...params({ line: act.line, character: act.character }) }, source));
                if (act.cancel) source.cancel();
            }
        }
    }

    /** Sooner or later what is published is what a server finds that is handed the last texts. */
    async function agrees(): Promise<void> {
        const texts = { ...Object.fromEntries(files), ...Object.fromEntries([...open].map(([name, { text }]) => [name, text])) };
        const cold = await TestWorkspace.serve(texts, createServerServices);
        const wanted = Object.keys(texts).map(name => ({ name, findings: JSON.stringify(cold.document(name).diagnostics?.map(plain) ?? []) }));
        const behind = (): (typeof wanted)[number] | undefined => wanted.find(({ name, findings }) => JSON.stringify((published.get(`${ROOT}/${name}`) ?? []).map(plain)) !== findings);
        for (let tries = 0; behind() && tries < PATIENCE_MS / 10; tries++) await new Promise(resolve => setTimeout(resolve, 10));
        const last = behind();
        if (last) throw new Broken(difference(last.name, (published.get(`${ROOT}/${last.name}`) ?? []).map(plain), JSON.parse(last.findings) as object[]));
    }
}

async function answered(editor: MessageConnection, method: string, params: object, source: CancellationTokenSource): Promise<void> {
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<never>((_, fail) => { timer = setTimeout(() => { fail(new Broken(`${method} is not answered${source.token.isCancellationRequested ? ', and was cancelled' : ''}.`)); }, PATIENCE_MS); });
    const answer = editor.sendRequest(method, params, source.token).then(() => undefined, (error: { code?: number; message?: string }) => error);
    const failed = await Promise.race([answer, late]).finally(() => { clearTimeout(timer); });
    // a question about a file that is nowhere is answered with where it is not
    if (failed && !FAIR.has(failed.code ?? 0) && !/There is no(?:thing at)? \/house/.test(failed.message ?? '')) throw new Broken(`${method} fails: ${failed.code} ${failed.message}`);
}

function difference(name: string, said: readonly object[], wanted: readonly object[]): string {
    const at = said.findIndex((each, i) => JSON.stringify(each) !== JSON.stringify(wanted[i]));
    const first = at < 0 ? said.length : at;
    return `Of ${name} ${said.length} findings are said, and there are ${wanted.length}; number ${first + 1} is said to be ${JSON.stringify(said[first])}, and is ${JSON.stringify(wanted[first])}.`;
}

/** A bare editor is told no related places. */
function plain({ code, range, message }: Diagnostic): object {
    return { code, range, message };
}

const ROOT = 'file:///house';

/** A disk that is a map: what is not in it is not there. */
class MapFiles implements FileSystemProvider {
    private readonly files: ReadonlyMap<string, string>;
    constructor(files: ReadonlyMap<string, string>) { this.files = files; }
    private name({ path }: URI): string { return path.replace(/^\/house\/?/, ''); }
    statSync(uri: URI): FileSystemNode {
        const isFile = this.files.has(this.name(uri)), isDirectory = !isFile && this.inside(uri).length > 0;
        if (!isFile && !isDirectory) throw new Error(`There is nothing at ${uri.path}.`);
        return { isFile, isDirectory, uri };
    }
    private inside(uri: URI): string[] {
        const folder = this.name(uri);
        return [...this.files.keys()].filter(name => folder === '' || name.startsWith(`${folder}/`)).map(name => name.slice(folder === '' ? 0 : folder.length + 1));
    }
    readFileSync(uri: URI): string {
        const text = this.files.get(this.name(uri));
        if (text === undefined) throw new Error(`There is no ${uri.path}.`);
        return text;
    }
    existsSync(uri: URI): boolean { return this.files.has(this.name(uri)); }
    readBinarySync(uri: URI): Uint8Array { return new TextEncoder().encode(this.readFileSync(uri)); }
    readDirectorySync(uri: URI): FileSystemNode[] { return [...new Set(this.inside(uri).map(name => name.split('/')[0]!))].map(name => this.statSync(uri.with({ path: `${uri.path.replace(/\/$/, '')}/${name}` }))); }
    async stat(uri: URI) { return this.statSync(uri); }
    async exists(uri: URI) { return this.existsSync(uri); }
    async readFile(uri: URI) { return this.readFileSync(uri); }
    async readBinary(uri: URI) { return this.readBinarySync(uri); }
    async readDirectory(uri: URI) { return this.readDirectorySync(uri); }
}
