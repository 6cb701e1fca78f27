import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CompletionList, Connection, Hover, InitializeParams, PublishDiagnosticsParams, SignatureHelp } from 'vscode-languageserver';
import { FittingDiagnostics } from '../../src/server/fitting-diagnostics.ts';
import { SHOW_RULE } from '../../src/server/messages.ts';
import { createServerServices } from '../../src/server/services.ts';
import { Client, shipped } from './client.ts';

describe('an editor that says nothing of itself, over the protocol', () => {
    let client: Client;
    let uri: string;
    beforeAll(async () => {
        client = await new Client(shipped).initialize();
        uri = await client.open('rooms/den.coffer');
    });
    afterAll(() => client.dispose());

    const placeOf = (words: string) => {
        const [before] = client.text(uri).split(words) as [string];
        const lines = before.split('\n');
        return { textDocument: { uri }, position: { line: lines.length - 1, character: lines.at(-1)!.length } };
    };

    test('is told of all there is', () => {
        expect(client.capabilities).toMatchObject({
            hoverProvider: true, signatureHelpProvider: { triggerCharacters: ['(', ','] },
            completionProvider: { triggerCharacters: expect.arrayContaining(['.', '"', '/']) as string[] }, semanticTokensProvider: { full: {}, range: true },
        });
    });
    test('is shown plain text', async () => {
        const { contents } = await client.request<Hover>('textDocument/hover', placeOf('beams '));
        expect(contents).toMatchObject({ kind: 'plaintext', value: expect.stringMatching(/^beams : Profile\n[\s\S]*\) deep: held down/) as string });
    });
    test('is offered no snippets', async () => {
        const { items } = await client.request<CompletionList>('textDocument/completion', placeOf('grid {'));
        expect(items.length).toBeGreaterThan(3);
        expect(items.filter(({ insertTextFormat, textEdit }) => insertTextFormat === 2 || /\$\d|\$\{/.test(textEdit!.newText))).toEqual([]);
        expect(items.find(({ documentation }) => documentation)?.documentation).toMatchObject({ kind: 'plaintext' });
    });
    test('has what is asked for while arguments are written', async () => {
        const name = /beams\s+([\w-]+)/.exec(client.text(uri))![1]!;
        const original = client.text(uri);
        await client.change(uri, original.replace(/(beams\s+[\w-]+)[^\n]*/, '$1('));
        const { position: { line } } = placeOf(`${name}(\n`);
        const help = await client.request<SignatureHelp>('textDocument/signatureHelp', { textDocument: { uri }, position: { line, character: client.text(uri).split('\n')[line]!.length } });
        expect(help.signatures[0]!.label).toMatch(new RegExp(`^${name}\\(.+\\)$`));
        expect(help.activeParameter).toBe(0);
        await client.change(uri, original);
    });
});

test('an editor that can show more is shown more', async () => {
    const { shared, coffer } = createServerServices();
    expect(coffer.editor).toMatchObject({ snippets: false, markdownInCompletion: false, markdownInHover: false, markdownInSignature: false });
    const capabilities: InitializeParams['capabilities'] = {
        textDocument: {
            completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown', 'plaintext'] } },
            hover: { contentFormat: ['markdown', 'plaintext'] }, signatureHelp: { signatureInformation: { documentationFormat: ['markdown'] } },
            semanticTokens: { requests: { full: { delta: true }, range: true }, tokenTypes: [], tokenModifiers: [], formats: [] },
        },
    };
    const told = await shared.lsp.LanguageServer.initialize({ processId: null, rootUri: null, capabilities, workspaceFolders: null });
    expect(coffer.editor).toMatchObject({ snippets: true, markdownInCompletion: true, markdownInHover: true, markdownInSignature: true });
    expect(told.capabilities.semanticTokensProvider).toMatchObject({ full: { delta: true } });
});

test('the code of a finding leads to its page where the editor says that it opens it, and nowhere else', async () => {
    const hrefOf = async (commands: readonly string[], codeDescriptionSupport: boolean): Promise<string | undefined> => {
        const sent: PublishDiagnosticsParams[] = [], wire = { sendDiagnostics: async (params: PublishDiagnosticsParams) => { sent.push(params); } };
        const fitting = new FittingDiagnostics(wire as unknown as Connection), { shared } = createServerServices();
        fitting.listenTo(shared.lsp.LanguageServer);
        await shared.lsp.LanguageServer.initialize({
            processId: null, rootUri: null, workspaceFolders: null, initializationOptions: { commands },
            capabilities: { textDocument: { publishDiagnostics: { codeDescriptionSupport } } },
        });
        const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } };
        await fitting.connection.sendDiagnostics({ uri: 'file:///a.coffer', diagnostics: [{ range, message: 'm', code: 'spacer-hits-cleat' }] });
        return sent[0]!.diagnostics[0]!.codeDescription?.href;
    };
    expect(await hrefOf([SHOW_RULE], true)).toBe('command:cofferwright.showRule?%5B%22spacer-hits-cleat%22%5D');
    expect(await hrefOf([], true)).toBeUndefined();
    expect(await hrefOf([SHOW_RULE], false)).toBeUndefined();
});
