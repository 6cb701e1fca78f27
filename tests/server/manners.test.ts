import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CodeAction, CodeLens, InlayHint, SelectionRange, WorkspaceEdit } from 'vscode-languageserver';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { SHOW_PIECES } from '../../src/server/messages.ts';
import { bundledServer, Client, hasNoErrors, hasRule, shipped } from './client.ts';

/** What an editor is shown beside the text, by the real server, and that it does not flicker. */
let client: Client;
let room: string;
beforeEach(async () => {
    client = await new Client(shipped).initialize([''], { commands: [SHOW_PIECES] });
    room = await client.open('rooms/den.coffer');
    await client.until(room, hasNoErrors);
});
afterEach(() => client.dispose());

const EVERYWHERE = { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } };
const hints = async (uri = room): Promise<string[]> => (await client.request<InlayHint[]>('textDocument/inlayHint', { textDocument: { uri }, range: EVERYWHERE })).map(({ label }) => label as string);
const REFRESH = 'workspace/inlayHint/refresh';
/** Ends when the server has answered everything that was sent before, and what it asked has arrived. */
const settled = async (): Promise<void> => { await client.request('textDocument/codeAction', { textDocument: { uri: room }, range: EVERYWHERE, context: { diagnostics: [] } }); };

test('says what it can do', () => {
    expect(client.capabilities).toMatchObject({
        inlayHintProvider: expect.anything(), codeLensProvider: { resolveProvider: true }, selectionRangeProvider: true, foldingRangeProvider: true,
        documentHighlightProvider: true, callHierarchyProvider: expect.anything(),
        workspaceSymbolProvider: expect.anything(), documentLinkProvider: expect.anything(), referencesProvider: true,
        renameProvider: { prepareProvider: true },
        codeActionProvider: { codeActionKinds: ['quickfix', 'source.fixAll.cofferwright', 'refactor.rewrite.grid'] }, workspace: { fileOperations: { willRename: { filters: expect.anything() } } },
    });
});

describe('inlay hints', () => {
    test('obey the settings, and are asked for anew when those change', async () => {
        const shown = await hints();
        expect(shown.length).toBeGreaterThan(2);
        client.settings = { inlayHints: { coffers: false, beams: false, pieces: true } };
        await client.notify('workspace/didChangeConfiguration', { settings: { cofferwright: client.settings } });
        expect(await hints()).toEqual([expect.stringMatching(/^\d+ pieces$/)]);
        expect(client.asked).toContain(REFRESH);
        // an editor that only says that something has changed, and waits to be asked what
        client.settings = {};
        await client.notify('workspace/didChangeConfiguration', { settings: null });
        await expect.poll(() => hints()).toEqual(shown);
    });

    test('are asked for anew when another file changes a figure, and only then', async () => {
        const shown = await hints();
        const yard = await client.open('yard.coffer');
        await client.change(yard, client.text(yard).replace('edition 1\n', 'edition 1\n\n// nothing new\n'));
        await client.change(room, client.text(room).replace('edition 1\n', 'edition 1\n\n'));
        expect(await hints()).toEqual(shown);
        await settled();
        expect(client.asked).toEqual([]);
        await client.replace(yard, 'stock clear-1x8 {\n  size     1x8', 'stock clear-1x8 {\n  size     1x8\n  width    7"');
        await client.until(room, hasRule('depths-nearly-equal'));
        await expect.poll(() => client.asked.includes(REFRESH)).toBe(true);
        expect(await hints()).not.toEqual(shown);
    });

    test('stay what they are through every letter of a line that is typed', async () => {
        const shown = await hints();
        const text = client.text(room), line = '  fixture lamp light at 5\', 4\' 3" diameter 5"\n';
        for (let typed = 1; typed <= line.length; typed++) {
            await client.change(room, text.replace('  line B', `${line.slice(0, typed)}\n  line B`));
            const answer = await hints().catch((error: { code: number }) => error.code);
            // what is asked while the text is ahead of the tree is refused, and the editor keeps what it has
            expect([shown, -32801]).toContainEqual(answer);
        }
        await settled();
        expect(await hints()).toEqual(shown);
    });
});

test('the line above a room tells its pieces, and leads to them in an editor that has the command', async () => {
    const lenses = await client.request<CodeLens[]>('textDocument/codeLens', { textDocument: { uri: room } });
    expect(lenses.map(({ command }) => command)).toEqual([undefined]);
    const { command } = await client.request<CodeLens>('codeLens/resolve', lenses[0]!);
    expect(command).toEqual({ title: expect.stringMatching(/^\d+ pieces, 9 coffers$/), command: SHOW_PIECES, arguments: [{ uri: room, room: 'den' }] });
});

test('selections, renames that are refused, fix all and moves go over the wire', async () => {
    const text = client.text(room), offset = text.indexOf('coffers-north'), line = text.slice(0, offset).split('\n').length - 1;
    const [selection] = await client.request<SelectionRange[]>('textDocument/selectionRange', { textDocument: { uri: room }, positions: [{ line, character: 6 }] });
    expect(selection!.range).toEqual({ start: { line, character: 4 }, end: { line, character: 17 } });

    const name = text.split('\n').findIndex(each => each.startsWith('room den'));
    const refused = client.request('textDocument/rename', { textDocument: { uri: room }, position: { line: name, character: 6 }, newName: 'beam' });
    await expect(refused).rejects.toThrow('`beam` is already a name here: den.coffer, line 2');

    await client.change(room, text.replace('14\' 2"\n', '169 7/8\n').replace('11\' 5"\n', '136 7/8\n'));
    await client.until(room, hasRule('mark-missing'));
    const [all] = await client.request<CodeAction[]>('textDocument/codeAction', { textDocument: { uri: room }, range: EVERYWHERE, context: { diagnostics: [], only: ['source.fixAll'] } });
    expect(all!.edit!.changes![room]!.map(({ newText }) => newText)).toEqual(['169 7/8"', '136 7/8"']);

    const edit = await client.request<WorkspaceEdit>('workspace/willRenameFiles', { files: [{ oldUri: client.uri('details'), newUri: client.uri('shop/details') }] });
    expect(Object.fromEntries(Object.entries(edit.changes!).map(([uri, edits]) => [uri, edits.map(({ newText }) => newText)]))).toEqual({
        [room]: ['"../shop/details/beam.coffer"'], [client.uri('details/beam.coffer')]: ['"../../yard.coffer"'],
    });
});

test('a finding stays put while the text around it is typed, also through builds that are broken off', async () => {
    await client.replace(room, 'wall south  14\' 2"', 'wall south  13\' 2"');
    await client.until(room, hasRule('room-not-rectangular'));
    const from = client.history.length, text = client.text(room);
    for (let typed = 1; typed <= 80; typed++) await client.change(room, text.replace('edition 1\n', `edition 1\n// ${'typing '.repeat(typed)}\n`));
    await client.change(room, `${text}// the end\nlet last = 1\n`);
    await settled();
    const since = client.history.slice(from).filter(({ uri }) => uri === room);
    expect(hasRule('room-not-rectangular')(client.findings(room)!)).toBe(true);
    for (const { diagnostics } of since) expect(hasRule('room-not-rectangular')(diagnostics)).toBe(true);
});

test('a file that is closed together with a text under another ending, or at no address, is read from the disk again', async () => {
    // what is opened at no address is held back before the server, so this is tried with the whole of it
    client.dispose();
    client = await new Client(await bundledServer()).initialize();
    room = await client.open('rooms/den.coffer');
    writeFileSync(join(client.folder, 'notes.txt'), 'edition 1\n');
    const others = ['', 'file:///', 'file:///%00', client.uri('notes.txt')];
    for (const uri of others) await client.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'coffer', version: 1, text: 'edition 1\n' } });
    await settled();
    await client.close(room);
    for (const uri of others) await client.notify('textDocument/didClose', { textDocument: { uri } });
    expect(await client.request<unknown[]>('textDocument/documentSymbol', { textDocument: { uri: room } })).not.toEqual([]);
});
