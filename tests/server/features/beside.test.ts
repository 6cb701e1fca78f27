import type { CodeLens, DocumentHighlight, DocumentSymbol, Location, SelectionRange } from 'vscode-languageserver';
import { describe, expect, test } from 'vitest';
import { selectionAt } from '../../../src/language/features/selection.ts';
import type { CofferCodeLenses } from '../../../src/server/features/code-lenses.ts';
import { inspect, takeOffOf } from '../../../src/pipeline/inspect.ts';
import { readFile } from '../../../src/language/read-file.ts';
import { uriOf, type TestWorkspace } from '../../support/workspace.ts';
import { HOUSE, openHouse, placeIn } from './house.ts';

/** For tests that only look. */
const OPEN = await openHouse();

async function lenses(house: TestWorkspace, path: string): Promise<CodeLens[]> {
    const document = house.document(path), provider = house.coffer.lsp.CodeLensProvider as CofferCodeLenses;
    return provider.provideCodeLens(document).map(lens => {
        expect(lens.command).toBeUndefined();
        return provider.resolve(lens);
    });
}

test('above a room stands what it takes, and still does while the room is broken', async () => {
    const house = await openHouse();
    const { layouts: [layout] } = inspect(readFile(house.document('rooms/den.coffer')));
    const title = `${takeOffOf(layout!.ceiling!).pieces.length} pieces, 12 coffers`;
    const [lens, ...others] = await lenses(house, 'rooms/den.coffer');
    expect(others).toEqual([]);
    expect(lens!.command).toEqual({ title, command: '' });
    expect(house.words({ uri: uriOf('rooms/den.coffer').toString(), range: lens!.range })).toBe('den');
    await house.edit({ 'rooms/den.coffer': HOUSE['rooms/den.coffer']!.replace('12\'', '12\' (') });
    expect((await lenses(house, 'rooms/den.coffer')).map(each => each.command?.title)).toEqual([title]);
    expect(await lenses(await openHouse({ 'rooms/den.coffer': HOUSE['rooms/den.coffer']!.replace('12\'', '12\' (') }), 'rooms/den.coffer')).toEqual([]);
});

describe('the outline tells what is computed', () => {
    const outline = async (house: TestWorkspace, path: string): Promise<string[]> => {
        const symbols = await house.coffer.lsp.DocumentSymbolProvider!.getSymbols(house.document(path), { textDocument: { uri: uriOf(path).toString() } });
        const lines = (each: DocumentSymbol, indent = ''): string[] => [`${indent}${each.name} | ${each.detail}`, ...(each.children ?? []).flatMap(child => lines(child, `${indent}  `))];
        return symbols.flatMap(symbol => lines(symbol));
    };
    test('of a room and a profile', async () => {
        expect(await outline(OPEN, 'rooms/den.coffer')).toEqual([
            'den | Den, 12 coffers', '  wall north | 12\'', '  wall east | 10\'', '  grid | 4 x 3 coffers, 2\' 6 3/4" x 2\' 11 5/16" to 2\' 11 11/32"', '  line B | 7 1/2" deep, 7" wide',
        ]);
        expect((await outline(OPEN, 'details/box.coffer'))[0]).toBe('box | profile, 7 1/2" deep, 7" wide');
    });
    test('of a room that is not known, nothing', async () => {
        const house = await openHouse({ 'rooms/den.coffer': HOUSE['rooms/den.coffer']!.replace('wall north  12\'', '') });
        expect((await outline(house, 'rooms/den.coffer')).slice(0, 3)).toEqual(['den | Den', '  wall east | 10\'', '  grid | ']);
    });
});

describe('folding', () => {
    const folds = async (house: TestWorkspace, path: string): Promise<string[]> => {
        const found = await house.coffer.lsp.FoldingRangeProvider!.getFoldingRanges(house.document(path), { textDocument: { uri: uriOf(path).toString() } });
        return found.map(({ startLine, endLine, kind }) => `${startLine + 1}-${endLine + 1}${kind ? ` ${kind}` : ''}`);
    };
    test('blocks, comments below each other', async () => expect(await folds(OPEN, 'rooms/den.coffer')).toEqual(['4-5 comment', '6-15', '9-13']));
    test('comments of several lines, imports below each other, a block that is not closed', async () => {
        const house = await openHouse({ 'a.coffer': 'edition 1\nfrom "./yard" use pine-1x6\nfrom "./yard" use pine-1x8\nfrom "./yard" use pine-1x2 // last\n// alone\n\n/*\n * long\n */\nlet a = 1" // behind\n// below\nroom r {\n  grid {\n    coffers-north 2\n' });
        expect(await folds(house, 'a.coffer')).toEqual(['2-4 imports', '7-9 comment', '12-14', '13-14']);
    });
    test('the built-in library', async () => {
        const { BUILTIN_URI } = await import('../../../src/language/workspace/builtin.ts');
        const document = OPEN.shared.workspace.LangiumDocuments.getDocument(BUILTIN_URI)!;
        const found = await OPEN.coffer.lsp.FoldingRangeProvider!.getFoldingRanges(document, { textDocument: { uri: BUILTIN_URI.toString() } });
        const lines = document.textDocument.getText().split('\n');
        expect(found.some(({ startLine }) => lines[startLine]!.startsWith('kind Room'))).toBe(true);
    });
});

test('a selection grows from the word to the file', () => {
    const { document, position } = placeIn(OPEN, 'rooms/den.coffer', 'coffers-n«orth  4');
    const steps: string[] = [];
    for (let step: SelectionRange | undefined = selectionAt(
        document, position,
    ); step; step = step.parent) steps.push(document.textDocument.getText(step.range));
    const text = document.textDocument.getText();
    expect(steps.slice(0, 2)).toEqual(['coffers-north', 'coffers-north  4']);
    expect(steps[2]).toMatch(/^coffers-north[^{}]*north-south$/);
    expect(steps[3]).toMatch(/^\{[^{}]*\}$/);
    expect(steps[4]).toBe(`grid ${steps[3]}`);
    expect(steps.slice(-2)).toEqual([text.slice(text.indexOf('room den')).trimEnd(), text]);
    const value = placeIn(OPEN, 'details/box.coffer', 'rip 3/4" x «3/4"');
    expect(document.textDocument.getText(selectionAt(value.document, value.position).range)).toBeDefined();
    const values: string[] = [];
    for (let step: SelectionRange | undefined = selectionAt(
        value.document, value.position,
    ); step; step = step.parent) values.push(value.document.textDocument.getText(step.range));
    expect(values.slice(0, 3)).toEqual(['3/4"', '3/4" x 3/4"', 'rip 3/4" x 3/4" from pine-1x2']);
});

test('a selection at the edges of a file, and in an empty one', async () => {
    const house = await openHouse({ 'empty.coffer': '', 'blank.coffer': '\n\n  \n' });
    for (const path of ['empty.coffer', 'blank.coffer', 'rooms/den.coffer']) {
        const document = house.document(path), end = document.textDocument.positionAt(document.textDocument.getText().length);
        for (const position of [{ line: 0, character: 0 }, end]) {
            let step: SelectionRange | undefined = selectionAt(document, position);
            while (step?.parent) step = step.parent;
            expect(step?.range).toEqual({ start: { line: 0, character: 0 }, end });
        }
    }
});

test('things of the whole house are found by a few letters, those of the language are not', async () => {
    const found = await OPEN.shared.lsp.WorkspaceSymbolProvider!.getSymbols({ query: 'p16' });
    expect(found.map(({ name, location }) => `${name} ${location.uri}`)).toEqual([`pine-1x6 ${uriOf('yard.coffer').toString()}`]);
    const namesFor = async (query: string): Promise<string[]> => (await OPEN.shared.lsp.WorkspaceSymbolProvider!.getSymbols({ query })).map(({ name }) => name);
    // a word within the name, letters over a hyphen, words with a space between, a title; not the middle of a word
    expect(await namesFor('1x6')).toEqual(['pine-1x6']);
    expect(await namesFor('PINE 1x8')).toEqual(['pine-1x8']);
    expect(await namesFor('Den')).toEqual(['den']);
    expect(await namesFor('ine')).toEqual([]);
    expect(await namesFor('?')).toEqual([]);
    const all = await OPEN.shared.lsp.WorkspaceSymbolProvider!.getSymbols({ query: '' });
    expect(all.map(({ name }) => name).sort()).toEqual(['box', 'den', 'pine-1x2', 'pine-1x6', 'pine-1x8']);
});

test('a name is marked wherever it stands in the file, its declaration too', async () => {
    const { document, ...params } = placeIn(OPEN, 'details/box.coffer', 'stock «deep');
    const found: DocumentHighlight[] = await OPEN.coffer.lsp.DocumentHighlightProvider!.getDocumentHighlight(document, params) ?? [];
    expect(found.map(({ range }) => document.textDocument.getText(range))).toEqual(['deep', 'deep']);
    const property = placeIn(OPEN, 'rooms/den.coffer', '«through ');
    const marks: DocumentHighlight[] = await OPEN.coffer.lsp.DocumentHighlightProvider!.getDocumentHighlight(
        property.document, { textDocument: property.textDocument, position: property.position },
    ) ?? [];
    expect(marks.map(({ range }) => property.document.textDocument.getText(range))).toEqual(['through']);
});

test('all uses of a profile, in every file', async () => {
    const { document, ...params } = placeIn(OPEN, 'details/box.coffer', 'profile «box');
    const uses: Location[] = await OPEN.coffer.lsp.ReferencesProvider!.findReferences(document, { ...params, context: { includeDeclaration: true } });
    expect(uses.map(({ uri, range }) => `${uri.slice(uri.lastIndexOf('/') + 1)}:${range.start.line + 1}`).sort()).toEqual(['box.coffer:4', 'den.coffer:12', 'den.coffer:15', 'den.coffer:2']);
});
