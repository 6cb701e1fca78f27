import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { spawn, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter, type MessageConnection } from 'vscode-jsonrpc/node';
import type { ClientCapabilities, CompletionItem, CompletionList, Diagnostic, Hover, InitializeResult, Location, LocationLink, Position, PublishDiagnosticsParams, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';

/**
 * `cofferwright language-server --stdio`, as built, asked by an editor that can do hardly anything and by one that can do
 * everything. A request from the server that the editor did not say it answers fails the test.
 */
const root = fileURLToPath(new URL('../..', import.meta.url));
const out = mkdtempSync(join(tmpdir(), 'cofferwright-dist-'));
beforeAll(async () => {
    const { bundle } = await import(pathToFileURL(join(root, 'src/build/bundle.mjs')).href) as { bundle(options: { outdir: string; sourcemap: boolean }): Promise<unknown> };
    await bundle({ outdir: out, sourcemap: false });
});
afterAll(() => rmSync(out, { recursive: true, force: true }));

const bare: ClientCapabilities = {};
const full: ClientCapabilities = {
    workspace: {
        workspaceFolders: true, configuration: true, applyEdit: true, workspaceEdit: { documentChanges: true, resourceOperations: ['create', 'rename', 'delete'], changeAnnotationSupport: { groupsOnLabel: true } },
        didChangeConfiguration: { dynamicRegistration: true }, didChangeWatchedFiles: { dynamicRegistration: true, relativePatternSupport: true },
        symbol: { dynamicRegistration: true },
        fileOperations: { willRename: true }, inlayHint: { refreshSupport: true }, codeLens: { refreshSupport: true },
        semanticTokens: { refreshSupport: true }, diagnostics: { refreshSupport: true },
    },
    textDocument: {
        synchronization: { didSave: true }, publishDiagnostics: {
            relatedInformation: true, codeDescriptionSupport: true, versionSupport: true, tagSupport: { valueSet: [1, 2] }, dataSupport: true,
        },
        completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown', 'plaintext'], insertReplaceSupport: true, labelDetailsSupport: true, resolveSupport: { properties: ['documentation', 'detail', 'additionalTextEdits'] } }, contextSupport: true },
        hover: { contentFormat: ['markdown', 'plaintext'] }, signatureHelp: { signatureInformation: { documentationFormat: ['markdown'], parameterInformation: { labelOffsetSupport: true } } },
        definition: { linkSupport: true }, rename: { prepareSupport: true }, documentSymbol: { hierarchicalDocumentSymbolSupport: true }, codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } } },
        foldingRange: {}, selectionRange: {}, inlayHint: {}, codeLens: {}, formatting: {}, rangeFormatting: {},
    },
    window: { workDoneProgress: true },
};

class Editor {
    readonly folder = mkdtempSync(join(tmpdir(), 'cofferwright-bare-'));
    readonly asked: string[] = [];
    readonly errors: string[] = [];
    private readonly process: ChildProcessWithoutNullStreams;
    private readonly connection: MessageConnection;
    private readonly published = new Map<string, Diagnostic[]>();
    private look = (): void => {};

    constructor() {
        cpSync(join(root, 'tests/editor/workspace'), this.folder, { recursive: true });
        this.process = spawn(process.execPath, [join(out, 'cli/main.js'), 'language-server', '--stdio']);
        this.process.stderr.on('data', (data: Buffer) => this.errors.push(String(data)));
        this.connection = createMessageConnection(new StreamMessageReader(this.process.stdout), new StreamMessageWriter(this.process.stdin));
        this.connection.onNotification('textDocument/publishDiagnostics', ({ uri, diagnostics }: PublishDiagnosticsParams) => {
            this.published.set(uri, diagnostics);
            this.look();
        });
        this.connection.onRequest((method: string, params: unknown) => {
            this.asked.push(method);
            return method === 'workspace/configuration' ? (params as { items: unknown[] }).items.map(() => null) : null;
        });
        this.connection.listen();
    }

    /** Without folders of a workspace, an editor names one folder the old way. */
    async begin(capabilities: ClientCapabilities): Promise<InitializeResult> {
        const folder = pathToFileURL(this.folder).href;
        const folders = capabilities.workspace?.workspaceFolders ? { workspaceFolders: [{ uri: folder, name: 'house' }] } : {};
        const result = await this.connection.sendRequest<InitializeResult>('initialize', { processId: null, rootUri: folder, ...folders, capabilities });
        await this.connection.sendNotification('initialized', {});
        return result;
    }

    uri(name: string): string {
        return pathToFileURL(join(this.folder, name)).href;
    }

    async open(name: string, change: (text: string) => string = text => text): Promise<TextDocument> {
        const text = change(readFileSync(join(this.folder, name), 'utf8'));
        await this.connection.sendNotification('textDocument/didOpen', { textDocument: { uri: this.uri(name), languageId: 'coffer', version: 1, text } });
        return TextDocument.create(this.uri(name), 'coffer', 1, text);
    }

    ask<Result>(method: string, params: object): Promise<Result> {
        return this.connection.sendRequest<Result>(method, params);
    }

    /** The test's own time limit ends a wait in vain. */
    finding(uri: string, rule: string): Promise<Diagnostic> {
        return new Promise(resolve => {
            this.look = (): void => {
                const found = this.published.get(uri)?.find(each => each.code === rule);
                if (found) resolve(found);
            };
            this.look();
        });
    }

    async end(): Promise<number | null> {
        const ended = new Promise<number | null>(resolve => this.process.once('exit', resolve));
        await this.connection.sendRequest('shutdown');
        await this.connection.sendNotification('exit');
        return ended;
    }

    dispose(): void {
        this.connection.dispose();
        this.process.kill();
        rmSync(this.folder, { recursive: true, force: true });
    }
}

let editor: Editor | undefined;
afterEach(() => editor?.dispose());

function at(document: TextDocument, words: string): { textDocument: { uri: string }; position: Position } {
    const offset = document.getText().indexOf(words);
    expect(offset, words).toBeGreaterThanOrEqual(0);
    return { textDocument: { uri: document.uri }, position: document.positionAt(offset + 1) };
}

/** An edit by file, whichever of the two ways it is written in. */
function editsOf({ changes, documentChanges }: WorkspaceEdit): Record<string, TextEdit[]> {
    const listed = (documentChanges ?? []).flatMap(change => 'edits' in change ? [[change.textDocument.uri, change.edits as TextEdit[]] as const] : []);
    return { ...changes, ...Object.fromEntries(listed) };
}

const itemsOf = (answer: CompletionList | CompletionItem[]): CompletionItem[] => Array.isArray(answer) ? answer : answer.items;

test.each([['hardly anything', bare], ['everything', full]])('an editor that can do %s is served', async (_, capabilities) => {
    editor = new Editor();
    const { capabilities: can } = await editor.begin(capabilities);
    expect(can).toMatchObject({
        hoverProvider: true, definitionProvider: true, completionProvider: expect.anything() as unknown, renameProvider: expect.anything() as unknown,
    });
    expect(can.documentFormattingProvider).toBe(true);

    // diagnostics: of what is typed, and of a file nobody opened
    const beam = await editor.open('details/beam.coffer', text => text.replace('pine-1x6\n    ease', 'pine-1x8\n    rip    5 9/16"\n    ease'));
    const finding = await editor.finding(beam.uri, 'bottom-wont-fit');
    expect(beam.getText(finding.range)).toBe('5 9/16"');
    if (capabilities === bare) expect(finding.relatedInformation).toBeUndefined();
    else expect(finding.relatedInformation!.length).toBeGreaterThan(0);

    const items = itemsOf(await editor.ask('textDocument/completion', at(beam, 'ase   1/16')));
    expect(items.map(item => item.label)).toContain('biscuits');
    if (capabilities === bare) {
        expect(items.filter(item => item.insertTextFormat === 2).map(item => item.label), 'snippets').toEqual([]);
        expect(items.filter(item => typeof item.documentation === 'object' && item.documentation.kind === 'markdown').map(item => item.label), 'markdown').toEqual([]);
    }

    const { contents } = await editor.ask<Hover>('textDocument/hover', at(beam, 'height'));
    expect(JSON.stringify(contents)).toContain('clear of the cleats');
    if (capabilities === bare) expect(contents).not.toMatchObject({ kind: 'markdown' });

    const room = await editor.open('rooms/den.coffer');
    const places = await editor.ask<(Location | LocationLink)[]>('textDocument/definition', at(room, 'clear-beam }'));
    expect(places.map(place => 'uri' in place ? place.uri : place.targetUri)).toEqual([beam.uri]);
    if (capabilities === bare) expect(places[0]).toHaveProperty('range');

    const edits = editsOf(await editor.ask<WorkspaceEdit>('textDocument/rename', { ...at(room, 'clear-beam }'), newName: 'fine-beam' }));
    expect(Object.keys(edits).sort()).toEqual([beam.uri, room.uri].sort());
    expect(TextDocument.applyEdits(room, edits[room.uri]!)).toContain('line B { beams fine-beam }');
    expect(TextDocument.applyEdits(beam, edits[beam.uri]!)).toContain('profile fine-beam()');

    const untidy = await editor.open('yard.coffer', text => text.replace('  size     1x6', '      size 1x6'));
    const laidOut = TextDocument.applyEdits(untidy, await editor.ask<TextEdit[]>('textDocument/formatting', { textDocument: { uri: untidy.uri }, options: { tabSize: 2, insertSpaces: true } }));
    expect(laidOut).toBe(readFileSync(join(editor.folder, 'yard.coffer'), 'utf8'));

    expect(await editor.end()).toBe(0);
    if (capabilities === bare) expect(editor.asked, 'an editor that registers nothing and has no settings is asked nothing').toEqual([]);
    expect(editor.errors).toEqual([]);
});
