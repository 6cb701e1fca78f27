import { CancellationToken } from 'vscode-jsonrpc';
// @ts-expect-error a library for tests alone, which has no types of its own
import MarkdownIt from 'markdown-it';
import { expect, test } from 'vitest';
import type { CofferCodeLenses } from '../../src/server/features/code-lenses.ts';
import { createServerServices } from '../../src/server/services.ts';
import { asCode, asWritten, inWords, together } from '../../src/text/markdown.ts';
import { TestWorkspace, uriOf } from '../support/workspace.ts';
import { EVIL, EVIL_FILE, evilHouse } from './house.ts';

/** What an editor does with Markdown at most: tags go through, and addresses become links. */
const renderer = new (MarkdownIt as new (options: object) => { render(markdown: string): string })({ html: true, linkify: true });
const UNFIT = /[\p{Cs}\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069\u200b\u00ad\ufdd0\u{e0041}]/gu;

const TRICKS = [
    EVIL, '![x](https://example.com/x.png)', '[x](command:workbench.action.quit)', '<img src="https://example.com/x.png">', 'https://example.com www.example.com a@example.com mailto:a@example.com', '\\`<img src=x>\\`',
    '`<img src=x>', '``` <img src=x>\n```\n<img src=x>', '`a`<img src=x>`', '```html\n</pre><img src=x>\n```', '[x]: https://example.com\n\n[x] ![x]', '<https://example.com>', '# x', 'x\n===', 'x\n---', '    x\n\tx', '> x',
    '| a | b |\n|---|---|\n| ![x](y) | b |', '&lt;img src=x&gt; &#60;img src=x&#62;', '*x* _y_ ~~z~~', '`` `<img src=x>` ``', '{@link https://example.com x}', '- <img src=x>\n- ![x](y)', '</td></tr></table><img src=x>', '<!-- x', '<![CDATA[ x',
    '`\n<img src=x>\n`', '`a\\`<img src=x>`b`', '\\', '\\\\`<img src=x>`',
];
const tagsIn = (html: string): string[] => [...new Set([...html.matchAll(/<(\w+)/g)].map(([, name]) => name!))].sort();

test.each(TRICKS)('Markdown shows it as it was typed: %j', trick => {
    const words = inWords(trick);
    expect(tagsIn(renderer.render(words.markdown)).filter(tag => tag !== 'p')).toEqual([]);
    for (const shown of [asWritten(trick), asCode(trick), together([asWritten(`- ${trick}`), asCode(trick), inWords(trick)])]) {
        expect(tagsIn(renderer.render(shown.markdown)).filter(tag => !['p', 'code', 'pre', 'ul', 'li'].includes(tag)), shown.markdown).toEqual([]);
        expect(`${shown.markdown}${shown.plain}`.match(UNFIT) ?? []).toEqual([]);
    }
    expect(renderer.render(asCode(trick).markdown).match(/<pre>/g)).toHaveLength(1);
});

test('a row of very many backquotes is looked at once, and is code where as many close it', () => {
    // at each of them anew it took some seconds of the processor: longer than a test has
    const row = '`'.repeat(60_000);
    expect(asWritten(`${row}\n`.repeat(4)).plain).toHaveLength(4 * 60_001);
    expect(asWritten('``a`` ```b`').markdown).toBe('`a` \\`\\`\\`b\\`');
});

test('what is written about a thing keeps its code and its lists, and shows nothing else', () => {
    expect(renderer.render(asWritten('Of `poplar-1x6`, 5 1/2" wide:\n- <see the yard>\n- 2 * 3').markdown))
        .toBe('<p>Of <code>poplar-1x6</code>, 5 1/2&quot; wide:</p>\n<ul>\n<li>&lt;see the yard&gt;</li>\n<li>2 * 3</li>\n</ul>\n');
    expect(asWritten('Of `poplar-1x6`').plain).toBe('Of poplar-1x6');
});

test('hovers, completion, signatures, hints, lenses, the outline and findings of a job full of what editors obey', async () => {
    const trick = `${EVIL.replaceAll('`', '')} ![x](https://example.com/x.png) <img src=x>`, texts = evilHouse(trick);
    delete texts[EVIL_FILE];
    texts['den.coffer'] += `let said = "${trick.replaceAll('"', '\\"')}"\nlet same = said\n`;
    const workspace = await TestWorkspace.serve(texts, createServerServices), { coffer } = workspace;
    Object.assign(coffer.editor, { markdownInHover: true, markdownInCompletion: true, markdownInSignature: true });
    let hovers = 0;
    const look = (what: string, answer: unknown): void => {
        for (const text of stringsIn(answer)) expect(text.match(UNFIT) ?? [], `${what}: ${JSON.stringify(text)}`).toEqual([]);
        for (const markdown of markdownIn(answer)) {
            hovers++;
            const tags = tagsIn(renderer.render(markdown).replaceAll(/<img src="data:image\/svg\+xml;base64,[\w+/=]*" alt="[^"<>]*">/g, ''));
            expect(tags.filter(tag => !['p', 'code', 'pre', 'ul', 'li'].includes(tag)), markdown).toEqual([]);
        }
    };
    for (const path of Object.keys(texts)) {
        const document = workspace.document(path), textDocument = { uri: uriOf(path).toString() }, text = document.textDocument.getText();
        look(path, document.diagnostics);
        for (const { index } of text.matchAll(/(?<![\w-])[\w"-]|$/g)) {
            const position = document.textDocument.positionAt(index);
            look(`${path} hover`, await coffer.lsp.HoverProvider!.getHoverContent(document, { textDocument, position }));
            look(`${path} signature`, await coffer.lsp.SignatureHelp!.provideSignatureHelp(document, { textDocument, position }));
        }
        for (const { index } of [...text.matchAll(/(?<=\n\s*)[\w-]|(?<=^ +[\w-]+ +)\S/gm)].filter((_, i) => i % 6 === 0)) {
            const position = document.textDocument.positionAt(index);
            const completion = await coffer.lsp.CompletionProvider!.getCompletion(document, { textDocument, position }, CancellationToken.None);
            look(`${path} completion`, completion?.items.map(({ label, detail, documentation }) => ({ label, detail, documentation })));
        }
        const everywhere = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };
        look(`${path} hints`, (await coffer.lsp.InlayHintProvider!.getInlayHints(document, { textDocument, range: everywhere }))?.map(({ label, tooltip }) => ({ label, tooltip })));
        const lenses = coffer.lsp.CodeLensProvider as CofferCodeLenses;
        look(`${path} lenses`, lenses.provideCodeLens(document).map(lens => lenses.resolve(lens).command?.title));
        look(`${path} outline`, await coffer.lsp.DocumentSymbolProvider!.getSymbols(document, { textDocument }));
    }
    expect(hovers).toBeGreaterThan(20);
});

function stringsIn(value: unknown): string[] {
    if (typeof value === 'string') return [value];
    return typeof value === 'object' && value !== null ? Object.entries(value).filter(([key]) => key !== 'data' && key !== 'uri').flatMap(([, each]) => stringsIn(each)) : [];
}

function markdownIn(value: unknown): string[] {
    if (typeof value !== 'object' || value === null) return [];
    const { kind, value: text } = value as { kind?: unknown; value?: unknown };
    return kind === 'markdown' && typeof text === 'string' ? [text] : Object.values(value).flatMap(markdownIn);
}
