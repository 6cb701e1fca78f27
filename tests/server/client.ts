import { spawn, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { PassThrough } from 'node:stream';
import { build } from 'esbuild';
import { NodeFileSystemProvider } from 'langium/node';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter, type MessageConnection } from 'vscode-jsonrpc/node';
import type { Diagnostic, InitializeResult, PublishDiagnosticsParams, Registration, RegistrationParams } from 'vscode-languageserver';
import { createConnection, ProposedFeatures, type Connection } from 'vscode-languageserver/node';
import { serve } from '../../src/server/serve.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

const bundled = new Map<string, Promise<string>>();
/** Bundles the server as it is shipped, or another one, once, and returns the path of the program. */
export function bundledServer(entry = 'src/server/main.ts'): Promise<string> {
    const known = bundled.get(entry) ?? bundleServer(entry);
    bundled.set(entry, known);
    return known;
}

async function bundleServer(entry: string): Promise<string> {
    const { forNode } = await import(pathToFileURL(join(root, 'src/build/bundle.mjs')).href) as { forNode: object };
    const outfile = join(root, `.cache/server-test/${entry.replaceAll('/', '-')}.${process.pid}.cjs`);
    await build({ ...forNode, format: 'cjs', mainFields: ['module', 'main'], entryPoints: [entry], outfile });
    return outfile;
}

type Server = (connection: Connection) => void;

/** What the shipped server does once it has its way to the editor. */
export const shipped: Server = connection => { serve(connection, new NodeFileSystemProvider()); };

/**
 * An editor without a face: it starts the real server as its own process and talks to it over a pipe, as VS Code does; or, handed what serves, has it in this
 * process, over the same messages as bytes. That takes a tenth of the time, and is the same but for how a process begins and ends.
 */
export class Client {
    /** A copy of the editor tests' workspace, on disk, of this client alone. */
    readonly folder = mkdtempSync(join(tmpdir(), 'cofferwright-server-'));
    readonly log: string[] = [];
    /** Everything published for any file, in order. */
    readonly history: PublishDiagnosticsParams[] = [];
    /** What the server asked for, in order: the names of its requests. */
    readonly asked: string[] = [];
    /** What the server asked to be told of, in order. */
    readonly registered: Registration[] = [];
    /** The settings under `cofferwright`, as the user of this editor has them. */
    settings: object | null = null;
    capabilities: InitializeResult['capabilities'] = {};

    private readonly process: ChildProcessWithoutNullStreams | undefined;
    private readonly connection: MessageConnection;
    private readonly published = new Map<string, Diagnostic[]>();
    private readonly waiting = new Set<() => void>();
    private readonly versions = new Map<string, { version: number; text: string }>();

    constructor(program: string | Server) {
        cpSync(join(root, 'tests/editor/workspace'), this.folder, { recursive: true });
        if (typeof program === 'string') {
            this.process = spawn(process.execPath, [program, '--stdio']);
            this.process.stderr.on('data', (data: Buffer) => this.log.push(data.toString()));
            this.connection = createMessageConnection(new StreamMessageReader(this.process.stdout), new StreamMessageWriter(this.process.stdin));
        } else {
            const there = new PassThrough(), back = new PassThrough();
            this.connection = createMessageConnection(new StreamMessageReader(back), new StreamMessageWriter(there));
            program(createConnection(ProposedFeatures.all, new StreamMessageReader(there), new StreamMessageWriter(back)));
        }
        this.connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
            const { uri, diagnostics } = params;
            this.history.push(params);
            this.published.set(uri, diagnostics);
            for (const look of this.waiting) look();
        });
        for (const told of ['window/logMessage', 'window/showMessage']) this.connection.onNotification(told, ({ message }: { message: string }) => {
            this.log.push(message);
            for (const look of this.waiting) look();
        });
        this.connection.onRequest('client/registerCapability', ({ registrations }: RegistrationParams) => {
            this.registered.push(...registrations);
            for (const look of this.waiting) look();
            return null;
        });
        this.connection.onRequest('workspace/configuration', ({ items }: { items: { section?: string }[] }) => items.map(({ section }) => section === 'cofferwright' ? this.settings : null));
        for (const method of ['workspace/inlayHint/refresh', 'workspace/codeLens/refresh']) this.connection.onRequest(method, () => { this.asked.push(method); return null; });
        this.connection.listen();
    }

    /** `folders`: names of folders of the workspace to open; none: an editor with single files open. */
    async initialize(folders: readonly string[] = [''], options?: object): Promise<this> {
        const result = await this.connection.sendRequest<InitializeResult>('initialize', {
            processId: this.process ? process.pid : null, rootUri: null, workspaceFolders: folders.length === 0 ? null : folders.map(name => ({ uri: name.includes(':') ? name : this.uri(name), name: `workspace/${name}` })),
            capabilities: {
                textDocument: { publishDiagnostics: { relatedInformation: true, tagSupport: { valueSet: [1, 2] } }, codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } } } },
                workspace: {
                    workspaceFolders: true, configuration: true, didChangeWatchedFiles: { dynamicRegistration: true, relativePatternSupport: true },
                    inlayHint: { refreshSupport: true }, codeLens: { refreshSupport: true }, fileOperations: { willRename: true },
                },
            },
            ...options && { initializationOptions: options },
        });
        this.capabilities = result.capabilities;
        await this.connection.sendNotification('initialized', {});
        return this;
    }

    uri(name: string): string {
        return pathToFileURL(join(this.folder, name)).href;
    }

    onDisk(name: string): string {
        return readFileSync(join(this.folder, name), 'utf8');
    }

    /** Opens a file of the workspace, or any address with a text of its own. Returns the address. */
    async open(name: string, text?: string): Promise<string> {
        const uri = name.includes(':') ? name : this.uri(name);
        const given = { version: 1, text: text ?? this.onDisk(name) };
        this.versions.set(uri, given);
        await this.connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'coffer', ...given } });
        return uri;
    }

    text(uri: string): string {
        return this.versions.get(uri)!.text;
    }

    /** Gives an open document a new text as a whole. */
    async change(uri: string, text: string): Promise<void> {
        const document = this.versions.get(uri)!;
        document.version++;
        document.text = text;
        await this.connection.sendNotification('textDocument/didChange', { textDocument: { uri, version: document.version }, contentChanges: [{ text }] });
    }

    /** Replaces words that occur once in an open document. */
    async replace(uri: string, old: string, words: string): Promise<void> {
        const parts = this.text(uri).split(old);
        if (parts.length !== 2) throw new Error(`"${old}" must occur once in ${uri}`);
        await this.change(uri, parts.join(words));
    }

    /** Types words in place of others that occur once, as an editor tells it: only what has changed. */
    async type(uri: string, old: string, words: string): Promise<void> {
        const document = this.versions.get(uri)!, from = document.text.indexOf(old);
        if (from < 0 || document.text.includes(old, from + 1)) throw new Error(`"${old}" must occur once in ${uri}`);
        const at = (offset: number) => ({ line: document.text.slice(0, offset).split('\n').length - 1, character: offset - (document.text.lastIndexOf('\n', offset - 1) + 1) });
        const range = { start: at(from), end: at(from + old.length) };
        document.version++;
        document.text = document.text.slice(0, from) + words + document.text.slice(from + old.length);
        await this.connection.sendNotification('textDocument/didChange', { textDocument: { uri, version: document.version }, contentChanges: [{ range, text: words }] });
    }

    async close(uri: string): Promise<void> {
        this.versions.delete(uri);
        await this.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
    }

    /** Writes or removes a file behind the editor's back and tells the server, as an editor that watches files does. */
    async onDiskChange(name: string, text: string | undefined): Promise<void> {
        if (text === undefined) rmSync(join(this.folder, name), { recursive: true });
        else writeFileSync(join(this.folder, name), text);
        const type = text === undefined ? 3 : 2;
        await this.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: this.uri(name), type }] });
    }

    /** What this editor answers when the server asks it, from now on. */
    answer<Params>(method: string, answer: (params: Params) => unknown): void {
        this.connection.onRequest(method, answer);
    }

    notify(method: string, params: object): Promise<void> {
        return this.connection.sendNotification(method, params);
    }

    /** What the server says besides the protocol, from now on. */
    on<Params>(method: string, listener: (params: Params) => void): void {
        this.connection.onNotification(method, listener);
    }

    request<Result>(method: string, params: object): Promise<Result> {
        return this.connection.sendRequest<Result>(method, params);
    }

    /** The findings last published for a file. */
    findings(uri: string): readonly Diagnostic[] | undefined {
        return this.published.get(uri);
    }

    /** Waits until what is published for a file is as wanted; the test's own time limit ends a wait in vain. */
    async until(uri: string, wanted: (findings: readonly Diagnostic[]) => boolean): Promise<readonly Diagnostic[]> {
        return new Promise(resolve => {
            const look = (): void => {
                const findings = this.published.get(uri);
                if (findings === undefined || !wanted(findings)) return;
                this.waiting.delete(look);
                resolve(findings);
            };
            this.waiting.add(look);
            look();
        });
    }

    /** Waits until something that this client keeps is as wanted. */
    async untilSo(wanted: () => boolean): Promise<void> {
        return new Promise(resolve => {
            const look = (): void => {
                if (!wanted()) return;
                this.waiting.delete(look);
                resolve();
            };
            this.waiting.add(look);
            look();
        });
    }

    /** Waits until the server has logged as many lines of this kind. */
    async untilLogged(words: string, count: number): Promise<void> {
        return new Promise(resolve => {
            const look = (): void => {
                if (this.log.filter(line => line.includes(words)).length < count) return;
                this.waiting.delete(look);
                resolve();
            };
            this.waiting.add(look);
            look();
        });
    }

    /** Ends the server as the protocol asks; returns its exit code. */
    async shutdown(): Promise<number | null> {
        const ended = new Promise<number | null>(resolve => this.process!.once('exit', resolve));
        await this.connection.sendRequest('shutdown');
        await this.connection.sendNotification('exit');
        return ended;
    }

    /** Goes away without a word, as an editor that crashes; returns the server's exit code. */
    async vanish(): Promise<number | null> {
        const ended = new Promise<number | null>(resolve => this.process!.once('exit', resolve));
        this.process!.stdin.destroy();
        this.process!.stdout.destroy();
        return ended;
    }

    /** Cleans up, whatever state the session is in. A server in this process is heard no more, and ends with what it was about to say. */
    dispose(): void {
        this.connection.dispose();
        this.process?.kill();
        rmSync(this.folder, { recursive: true, force: true });
    }
}

export const isError = (finding: Diagnostic): boolean => finding.severity === 1;
export const hasRule = (rule: string) => (findings: readonly Diagnostic[]): boolean => findings.some(finding => finding.code === rule);
export const hasNoErrors = (findings: readonly Diagnostic[]): boolean => !findings.some(isError);
