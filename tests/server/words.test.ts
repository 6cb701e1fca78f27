import { readFileSync } from 'node:fs';
import type { CodeAction, CodeLens, DocumentSymbol, Hover, InlayHint } from 'vscode-languageserver';
import { afterEach, expect, test } from 'vitest';
import { bundledServer, Client, hasRule } from './client.ts';

/** What the server itself says, in an editor with another language: here one that has each text between brackets. */
const bundle = JSON.parse(readFileSync(new URL('../../src/extension/l10n/bundle.l10n.json', import.meta.url), 'utf8')) as Record<string, string>;
const strange = Object.fromEntries(Object.keys(bundle).map(text => [text, `⟦${text.replaceAll('e', 'ê')}⟧`]));
const EVERYWHERE = { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } };

let client: Client;
afterEach(() => client.dispose());

/** Words that stand in no brackets. */
function notTranslated(text: string): string[] {
    let outside = text;
    for (let before = ''; before !== outside;) outside = (before = outside).replace(/⟦[^⟦⟧]*⟧/g, '');
    return outside.match(/\p{Letter}{2,}/gu) ?? [];
}

test('hints, counts, fixes and hovers are in the language of the editor', async () => {
    client = await new Client(await bundledServer()).initialize([''], { words: strange });
    client.settings = { inlayHints: { pieces: true } };
    const room = await client.open('rooms/den.coffer'), beam = await client.open('details/beam.coffer');
    for (const uri of [room, beam]) {
        const hints = await client.request<InlayHint[]>('textDocument/inlayHint', { textDocument: { uri }, range: EVERYWHERE });
        expect(hints.length).toBeGreaterThan(0);
        expect(hints.flatMap(({ label, tooltip }) => notTranslated(`${label as string} ${tooltip as string}`))).toEqual([]);
    }
    const lenses = await client.request<CodeLens[]>('textDocument/codeLens', { textDocument: { uri: room } });
    const titles = await Promise.all(lenses.map(async lens => (await client.request<CodeLens>('codeLens/resolve', lens)).command!.title));
    expect(titles).toEqual([expect.stringMatching(/^⟦\d+ piêcês⟧, ⟦9 coffêrs⟧$/)]);

    const lines = client.text(room).split('\n'), line = lines.findIndex(each => each.includes('coffers-north'));
    const hover = await client.request<Hover>('textDocument/hover', { textDocument: { uri: room }, position: { line, character: lines[line]!.indexOf('coffers-north') + 2 } });
    expect(JSON.stringify(hover.contents)).toMatch(/⟦⟦3 coffêrs⟧ along thê north wall, êach .* clêar⟧/);
    const outline = await client.request<DocumentSymbol[]>('textDocument/documentSymbol', { textDocument: { uri: room } });
    expect(outline.map(({ detail }) => detail)).toContain('Den, ⟦9 coffêrs⟧');
    await client.replace(room, 'wall south  14\' 2"', 'wall south  13\' 2"');
    const [finding] = (await client.until(room, hasRule('room-not-rectangular'))).filter(({ code }) => code === 'room-not-rectangular');
    const actions = await client.request<CodeAction[]>('textDocument/codeAction', { textDocument: { uri: room }, range: finding!.range, context: { diagnostics: [finding] } });
    expect(actions.map(({ title }) => title)).toContain('⟦Allow room-not-rectangular hêrê, and say why⟧');
    // findings are the sentences of the command line and its reports, in its language
    expect(finding!.message).not.toContain('⟦');
});

test('an editor that hands over nothing, or something else, is told in English', async () => {
    client = await new Client(await bundledServer()).initialize([''], { words: { '{0} pieces': 7, '{0} coffers': '{0} Felder' } });
    const room = await client.open('rooms/den.coffer');
    await client.until(room, () => true);
    const [lens] = await client.request<CodeLens[]>('textDocument/codeLens', { textDocument: { uri: room } });
    expect((await client.request<CodeLens>('codeLens/resolve', lens!)).command!.title).toMatch(/^\d+ pieces, 9 Felder$/);
});
