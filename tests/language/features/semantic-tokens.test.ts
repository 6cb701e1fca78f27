import type { SemanticTokens } from 'vscode-languageserver-types';
import { SemanticTokensDecoder } from 'langium/lsp';
import { expect, test } from 'vitest';
import { CofferSemanticTokens } from '../../../src/language/features/semantic-tokens.ts';
import { TestWorkspace } from '../../support/workspace.ts';

const TEXT = `edition 1
from "./yard" use oak as wide
let reveal = 1/4"
stock poplar { size 1x6; species red-oak }
profile box(groove: Length = reveal, deep: Stock = wide) {
  sides { stock deep; rip deep.width - 1/32"; rabbet groove x 1/4" on lower-back; corners miterd }
}
room den {
  fixture lamp light at 1', 2'
  grid { beams box(groove: 1/8"); centered-on lamp }
}
alternate a { den.grid.through north-south }
`;

const workspace = await TestWorkspace.open({ 'yard.coffer': 'stock oak { size 1x8 }', 'den.coffer': TEXT });
const document = workspace.document('den.coffer');
const provider = workspace.coffer.lsp.SemanticTokenProvider!;
/** One that remembers nothing of what `provider` has sent. */
const other = new CofferSemanticTokens(workspace.coffer);
const textDocument = { uri: document.textDocument.uri };

function decoded(tokens: SemanticTokens): string[] {
    const types = Object.fromEntries(Object.entries(provider.tokenTypes).map(([name, number]) => [number, name]));
    const modifiers = (bits: number) => Object.entries(provider.tokenModifiers).filter(([, bit]) => (bits & bit) !== 0).map(([name]) => ` ${name}`).join('');
    let line = 0, character = 0;
    const found: string[] = [];
    for (let i = 0; i < tokens.data.length; i += 5) {
        const [down, along, length, type, bits] = tokens.data.slice(i, i + 5) as [number, number, number, number, number];
        character = down === 0 ? character + along : along;
        line += down;
        found.push(`${document.textDocument.getText({ start: { line, character }, end: { line, character: character + length } })}: ${types[type]}${modifiers(bits)}`);
    }
    return found;
}

test('names are colored by what they mean, in the order of the text; the rest is left to the grammar', async () => {
    expect(decoded(await provider.semanticHighlight(document, { textDocument }))).toEqual([
        'oak: variable readonly', 'wide: variable declaration readonly',
        'reveal: variable declaration readonly',
        'poplar: variable declaration readonly', 'size: property', 'species: property', 'red-oak: enumMember',
        'box: class declaration', 'groove: parameter declaration', 'Length: type', 'reveal: variable readonly', 'deep: parameter declaration', 'Stock: type', 'wide: variable readonly',
        'sides: property', 'stock: property', 'deep: parameter', 'rip: property', 'deep: parameter', 'width: property', 'rabbet: property', 'groove: parameter', 'on: property', 'lower-back: enumMember', 'corners: property',
        'den: namespace declaration', 'lamp: variable declaration', 'light: enumMember', 'at: property',
        'grid: property', 'beams: property', 'box: class', 'groove: parameter', 'centered-on: property', 'lamp: variable',
        'den: namespace', 'grid: property', 'through: property', 'north-south: enumMember',
    ]);
});

test('of some lines only', async () => {
    const range = { start: { line: 8, character: 0 }, end: { line: 9, character: 0 } };
    expect(decoded(await provider.semanticHighlightRange(document, { textDocument, range }))).toEqual(['lamp: variable declaration', 'light: enumMember', 'at: property']);
});

test('what has changed only: applied to what was there, it is the whole', async () => {
    let before = await provider.semanticHighlight(document, { textDocument });
    expect(await provider.semanticHighlightDelta(document, { textDocument, previousResultId: before.resultId! })).toMatchObject({ edits: [] });
    for (const text of [TEXT.replace('size 1x6; ', ''), TEXT.replace('edition 1', 'edition 1\nstock ash { size 1x4 }'), TEXT.replace('groove x', 'deep x'), TEXT]) {
        await workspace.edit({ 'den.coffer': text });
        const now = workspace.document('den.coffer');
        const changes = await provider.semanticHighlightDelta(now, { textDocument, previousResultId: before.resultId! });
        const whole = await other.semanticHighlight(now);
        const data = [...before.data];
        if (!('edits' in changes)) throw new Error('the whole was sent');
        for (const { start, deleteCount, data: put } of changes.edits.toReversed()) data.splice(start, deleteCount, ...put ?? []);
        expect(data).toEqual(whole.data);
        before = { data, resultId: changes.resultId! };
    }
});

test('asked for the whole and for some lines at once, each is answered', async () => {
    const range = { start: { line: 8, character: 0 }, end: { line: 9, character: 0 } };
    const [whole, some] = await Promise.all([provider.semanticHighlight(workspace.document('den.coffer'), { textDocument }), provider.semanticHighlightRange(workspace.document('den.coffer'), { textDocument, range })]);
    expect(decoded(some)).toHaveLength(3);
    expect(decoded(whole).length).toBeGreaterThan(30);
});

test('no name is colored twice', async () => {
    const tokens = SemanticTokensDecoder.decode(await provider.semanticHighlight(document, { textDocument }), provider.tokenTypes, document);
    expect(new Set(tokens.map(({ offset }) => offset)).size).toBe(tokens.length);
});
