import type { CodeAction, CompletionList, Diagnostic, DocumentSymbol, Hover, TextEdit } from 'vscode-languageserver';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { bundledServer, Client, hasNoErrors, hasRule, isError } from './client.ts';

/** One session with the server, from the handshake to its end, in the order an editor would have it. */
let client: Client;
beforeAll(async () => { client = await new Client(await bundledServer()).initialize(); });
afterAll(() => client.dispose());

const positionOf = (text: string, words: string): { line: number; character: number } => {
    const before = text.slice(0, text.indexOf(words)).split('\n');
    return { line: before.length - 1, character: before.at(-1)!.length };
};
const wordsAt = (text: string, { range: { start, end } }: Diagnostic): string => text.split('\n')[start.line]!.slice(start.character, end.line === start.line ? end.character : undefined);
const outline = async (uri: string): Promise<string[]> => (await client.request<DocumentSymbol[] | null>('textDocument/documentSymbol', { textDocument: { uri } }) ?? []).map(symbol => symbol.name);

describe('the language server', () => {
    test('says what it can do', () => {
        expect(client.capabilities).toMatchObject({
            hoverProvider: true, documentSymbolProvider: true, codeActionProvider: expect.anything(), documentFormattingProvider: true,
            definitionProvider: true,
            completionProvider: expect.anything(),
        });
    });

    test('publishes findings of every file of the folder, opened or not', async () => {
        for (const name of ['yard.coffer', 'details/beam.coffer', 'rooms/den.coffer']) {
            const findings = await client.until(client.uri(name), () => true);
            expect(findings.filter(isError), name).toEqual([]);
        }
    });

    test('publishes a mistake as it is typed: rule, words, place, the other half; and offers its fix', async () => {
        const uri = await client.open('details/beam.coffer');
        await client.replace(uri, 'pine-1x6\n    ease', 'pine-1x8\n    rip    5 9/16"\n    ease');
        const finding = (await client.until(uri, hasRule('bottom-wont-fit'))).find(each => each.code === 'bottom-wont-fit')!;
        expect(finding).toMatchObject({ severity: 1, source: 'cofferwright' });
        expect(finding.message).toContain('5 9/16"');
        expect(finding.message).toContain('5 1/2"');
        expect(wordsAt(client.text(uri), finding)).toBe('5 9/16"');
        expect(finding.relatedInformation?.map(({ location }) => location.uri)).toContain(uri);

        const actions = await client.request<CodeAction[]>('textDocument/codeAction', { textDocument: { uri }, range: finding.range, context: { diagnostics: [finding] } });
        const edits = actions[0]!.edit?.changes?.[uri] ?? [];
        expect(actions.map(({ title }) => title)).toContain('Allow bottom-wont-fit here, and say why');
        expect(edits.map(edit => edit.newText).join()).toBe('5 1/2"');
    });

    test('forgets a mistake that was undone', async () => {
        const uri = client.uri('details/beam.coffer');
        await client.change(uri, client.onDisk('details/beam.coffer'));
        expect(await client.until(uri, hasNoErrors)).toBeDefined();
    });

    test('checks again what reaches a changed file through another, saved or not', async () => {
        const room = client.uri('rooms/den.coffer');
        const yard = await client.open('yard.coffer');
        await client.replace(yard, 'stock clear-1x8 {\n  size     1x8', 'stock clear-1x8 {\n  size     1x8\n  width    7"');
        expect(await client.until(room, hasRule('depths-nearly-equal'))).toHaveLength(1);
        await client.change(yard, client.onDisk('yard.coffer'));
        await client.until(room, findings => findings.length === 0);

        await client.close(yard);
        await client.onDiskChange('yard.coffer', client.onDisk('yard.coffer').replace('stock clear-1x8 {\n  size     1x8', 'stock clear-1x8 {\n  size     1x8\n  width    7"'));
        await client.until(room, hasRule('depths-nearly-equal'));
        await client.onDiskChange('yard.coffer', client.onDisk('yard.coffer').replace('\n  width    7"', ''));
        await client.until(room, findings => findings.length === 0);
    });

    test('says the last word about the last text, however fast it comes', async () => {
        const uri = client.uri('details/beam.coffer');
        const original = client.text(uri);
        for (let height = 1; height <= 60; height++) await client.change(uri, original.replace('height  4"', `height  ${height}"`));
        await client.until(uri, findings => findings.some(finding => finding.code === 'spacer-hits-cleat' && finding.message.includes(`5'`)));
        await client.change(uri, original);
        await client.until(uri, hasNoErrors);
    });

    test('answers hover, completion, outline and formatting', async () => {
        const uri = client.uri('details/beam.coffer');
        const at = positionOf(client.text(uri), 'height  4"');
        const hover = await client.request<Hover>('textDocument/hover', { textDocument: { uri }, position: at });
        expect(JSON.stringify(hover.contents)).toContain('clear of the cleats');
        const completion = await client.request<CompletionList>('textDocument/completion', { textDocument: { uri }, position: at });
        expect(completion.items.map(item => item.label)).toContain('from-end');
        expect(await outline(uri)).toEqual(expect.arrayContaining(['beam', 'clear-beam']));
        const edits = await client.request<TextEdit[]>('textDocument/formatting', { textDocument: { uri }, options: { tabSize: 2, insertSpaces: true } });
        expect(edits).toEqual([]);
    });

    test('hands out the built-in vocabulary, and nothing else by that way', async () => {
        expect(await client.request('cofferwright/builtinDocument', { uri: 'builtin:/builtin.coffer' })).toContain('kind Spacers');
        expect(await client.request('cofferwright/builtinDocument', { uri: 'builtin:///builtin.coffer' })).toContain('kind Spacers');
        expect(await client.request('cofferwright/builtinDocument', { uri: client.uri('yard.coffer') })).toBeNull();
        // the pages of rules, of the trade and of the language
        expect(await client.request('cofferwright/builtinDocument', { uri: 'builtin:/rules/spacer-hits-cleat.md' })).toMatch(/^## spacer-hits-cleat\n[\s\S]*Fixed:/);
        expect(await client.request('cofferwright/builtinDocument', { uri: 'builtin:///rules/unknown-name.md' })).toMatch(/^## unknown-name\n\n./);
        for (const uri of ['builtin:/rules/no-such-rule.md', 'builtin:/rules/constructor.md', 'file:///rules/spacer-hits-cleat.md', 'builtin:/rules/']) {
            expect(await client.request('cofferwright/builtinDocument', { uri })).toBeNull();
        }
        const uri = await client.open('builtin:/builtin.coffer', await client.request<string>('cofferwright/builtinDocument', { uri: 'builtin:/builtin.coffer' }));
        expect(await outline(uri)).toContain('Spacers');
        await client.close(uri);
        await client.until(client.uri('rooms/den.coffer'), hasNoErrors);
    });

    test('checks a text that was never saved', async () => {
        const uri = await client.open('untitled:Untitled-1', 'edition 1\nstock pine {\n  size 1x6\n  heigth 5"\n}\n');
        const findings = await client.until(uri, each => each.length > 0);
        expect(findings.map(finding => finding.message).join()).toContain('heigth');
        await client.close(uri);
        await client.until(uri, each => each.length === 0);
        // closed while the server still works on it
        for (let time = 0; time < 20; time++) {
            await client.open(uri, `edition 1\nstock pine {\n  size 1x${time}\n}\n`);
            await client.change(uri, 'room');
            await client.close(uri);
        }
        expect(await outline(client.uri('details/beam.coffer'))).toContain('beam');
        await client.until(uri, each => each.length === 0);
    });

    test('goes back to what the disk holds when a text is closed without saving', async () => {
        const uri = await client.open('rooms/den.coffer');
        await client.replace(uri, 'wall south  14\' 2"', 'wall south  13\' 2"');
        await client.until(uri, hasRule('room-not-rectangular'));
        await client.close(uri);
        await client.until(uri, hasNoErrors);
    });

    test('takes back the findings of a file that is gone', async () => {
        await client.onDiskChange('rooms/spare.coffer', 'edition 1\nroom spare "Spare" {\n  wal north 3\'\n}\n');
        await client.until(client.uri('rooms/spare.coffer'), findings => findings.length > 0);
        await client.onDiskChange('rooms/spare.coffer', undefined);
        await client.until(client.uri('rooms/spare.coffer'), findings => findings.length === 0);
    });

    test('lives on after what nobody should type or ask', async () => {
        const uri = await client.open('rooms/den.coffer');
        const original = client.text(uri);
        const horrors = [
            '{'.repeat(5000), '}'.repeat(5000), `room a { grid { coffers-north ${'('.repeat(5000)}1${')'.repeat(5000)}\n} }`, `room a ${'{ grid '.repeat(2000)}`,
            Array.from({ length: 4000 }, (_, at) => String.fromCharCode(at * 7 % 65536)).join(''), '\u0000'.repeat(100_000), '"'.repeat(9999), '\uFEFFedition 1\r\nroom\r\n',
            `edition 1\nroom big "Big" {\n  wall north 1000000'\n  wall east 1000000'\n  wall south 1000000'\n  wall west 1000000'\n  grid {\n    coffers-north 1000\n    coffers-east 1000\n  }\n}\n`, '',
        ];
        for (const text of horrors) {
            await client.change(uri, text);
            await outline(uri);
            await client.request('textDocument/hover', { textDocument: { uri }, position: { line: 0, character: 1 } }).catch(String);
            await client.request('textDocument/completion', { textDocument: { uri }, position: { line: 0, character: 1 } }).catch(String);
        }
        // places and files that do not exist: an empty answer or an error, and the next request is served
        await client.request('textDocument/hover', { textDocument: { uri: client.uri('nowhere.coffer') }, position: { line: 0, character: 0 } }).catch(String);
        await client.request('textDocument/hover', { textDocument: { uri }, position: { line: 999_999, character: 999_999 } }).catch(String);
        await client.change(uri, original);
        await client.until(uri, hasNoErrors);
        expect(await outline(uri)).toContain('den');
    });

    test('ends when asked to, with nothing uncaught in its log', async () => {
        const code = await client.shutdown();
        expect(code).toBe(0);
        expect(client.log.filter(line => /Uncaught|Nobody waited|Error:/.test(line))).toEqual([]);
    });
});

/** For what needs a session of its own. */
async function withClient(folders: readonly string[], use: (client: Client) => Promise<void>): Promise<void> {
    const own = await new Client(await bundledServer()).initialize(folders);
    try {
        await use(own);
    } finally {
        own.dispose();
    }
}

test('a file opened without its folder finds what it imports', () => withClient([], async own => {
    const uri = await own.open('rooms/den.coffer');
    expect(await own.until(uri, () => true)).toEqual([]);
    await own.onDiskChange('yard.coffer', own.onDisk('yard.coffer').replace('stock clear-1x8 {\n  size     1x8', 'stock clear-1x8 {\n  size     1x8\n  width    7"'));
    await own.until(uri, hasRule('depths-nearly-equal'));
}));

test('an import that leaves the open folder is an error at its path', () => withClient(['rooms'], async own => {
    const uri = await own.open('rooms/den.coffer');
    const findings = await own.until(uri, each => each.some(isError));
    expect(wordsAt(own.text(uri), findings.find(isError)!)).toContain('../details/beam.coffer');
}));

test('a server whose editor has vanished ends by itself', () => withClient([''], async own => {
    await own.until(own.uri('rooms/den.coffer'), () => true);
    expect(await own.vanish()).not.toBe(0);
}));
