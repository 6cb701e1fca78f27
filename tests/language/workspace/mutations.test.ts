import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { EXAMPLE_PATHS, EXAMPLES } from '../../support/examples.ts';
import { TestWorkspace } from '../../support/workspace.ts';
import { runs } from '../../support/full.ts';

const PATHS = EXAMPLE_PATHS;

/** What hands do to a text: take a stretch out, put one in, put one twice. */
interface Slip { readonly at: number; readonly takes: number; readonly puts: string }
const PIECES = [
    '{', '}', '(', ')', '"', '\n', '.', ',', ':', '=', ' x ', ' to ', ' per ', '±', '1/2"', "3'", 'stock', 'profile p', 'room r {', 'like', 'from "./yard.coffer" use poplar-1x6\n',
    'from "../yard.coffer" use ', 'let a = a.width\n', 'let b: Stock = b\n', 'alternate a {', 'measured {', 'kind K is K {', 'wall', 'line B', '/*', '//', '/**', '\u0000', '😀', '￼', '\r\n', '\t', 'a.b.c.d',
    'job "x" {', 'edition 9', 'sides.corners.past', '#20', '((((((((', '- - - -', 'study.grid.beams.sides', 'x', 'to', 'per',
];
const slip: fc.Arbitrary<Slip> = fc.record({ at: fc.double({ min: 0, max: 1, noNaN: true }), takes: fc.nat(60), puts: fc.oneof(fc.constantFrom(...PIECES), fc.constant(''), fc.string({ maxLength: 4 })) });

function slipped(text: string, slips: readonly Slip[]): string {
    return slips.reduce((now, { at, takes, puts }) => {
        const offset = Math.floor(at * now.length);
        return now.slice(0, offset) + puts + now.slice(offset + takes);
    }, text);
}

describe('whatever is typed into real files', () => {
    test('the check answers, every finding stands in the text, and what is put right again is right', async () => {
        const workspace = await TestWorkspace.open(EXAMPLES);
        let brokenOnes = 0;
        await fc.assert(fc.asyncProperty(fc.constantFrom(...PATHS), fc.array(slip, { minLength: 1, maxLength: 4 }), async (path, slips) => {
            const text = slipped(EXAMPLES[path]!, slips);
            await workspace.edit({ [path]: text });
            for (const each of PATHS) {
                expect(workspace.rules(each)).not.toContain('internal-error');
                for (const { error } of workspace.document(each).references) expect(error?.message ?? '').not.toContain('occurred');
                const document = workspace.document(each).textDocument;
                for (const { at, related, fixes } of workspace.findings(each)) {
                    expect(at.uri).toBe(document.uri);
                    expect(document.positionAt(document.offsetAt(at.range.start))).toEqual(at.range.start);
                    expect(document.offsetAt(at.range.end)).toBeGreaterThanOrEqual(document.offsetAt(at.range.start));
                    for (const { message } of related) expect(message).not.toBe('');
                    for (const { edits } of fixes) expect(edits.length).toBeGreaterThan(0);
                }
            }
            brokenOnes += workspace.findings(path).length > 0 ? 1 : 0;
            await workspace.edit({ [path]: EXAMPLES[path] });
            for (const each of PATHS) expect(workspace.rules(each)).toEqual([]);
        }), { seed: 411, numRuns: runs(250) });
        expect(brokenOnes).toBeGreaterThan(runs(150));
    });

    test('what the editor asks is answered', async () => {
        const workspace = await TestWorkspace.open(EXAMPLES);
        const { lsp } = workspace.coffer;
        await fc.assert(fc.asyncProperty(fc.constantFrom(...PATHS), fc.array(
            slip, { minLength: 1, maxLength: 3 },
        ), fc.double({ min: 0, max: 1, noNaN: true }), async (path, slips, where) => {
            const text = slipped(EXAMPLES[path]!, slips);
            await workspace.edit({ [path]: text });
            const document = workspace.document(path);
            const at = { textDocument: { uri: document.textDocument.uri }, position: document.textDocument.positionAt(Math.floor(where * text.length)) };
            await lsp.CompletionProvider!.getCompletion(document, at);
            await lsp.HoverProvider!.getHoverContent(document, at);
            await lsp.RenameProvider!.prepareRename(document, at);
            await lsp.RenameProvider!.rename(document, { ...at, newName: 'other' });
            await lsp.DefinitionProvider!.getDefinition(document, at);
            await lsp.ReferencesProvider!.findReferences(document, { ...at, context: { includeDeclaration: true } });
            await lsp.DocumentHighlightProvider!.getDocumentHighlight(document, at);
            await lsp.DocumentLinkProvider!.getDocumentLinks(document, at);
            await lsp.FoldingRangeProvider!.getFoldingRanges(document, at);
            const symbols = await lsp.DocumentSymbolProvider!.getSymbols(document, at);
            for (const { name } of symbols) expect(name).not.toBe('');
        }), { seed: 412, numRuns: runs(250) });
    });
});
