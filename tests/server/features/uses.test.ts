import { expect, test } from 'vitest';
import type { CallHierarchyItem, CodeLens } from 'vscode-languageserver';
import type { CofferCodeLenses } from '../../../src/server/features/code-lenses.ts';
import { uriOf } from '../../support/workspace.ts';
import { openHouse, placeIn } from './house.ts';

const TOWER = `edition 1
from "../details/box" use box as tower-box
room tower "Tower" { wall north 9'; wall east 9'; grid { coffers-north 2; coffers-east 2; beams tower-box } }
`;
const HOUSE = await openHouse({
    'rooms/tower.coffer': TOWER,
    'details/deeper.coffer': `edition 1
from "box" use box
profile deeper like box { }
stock spare { size 1x10 }
`,
});

async function lensesOf(path: string, house = HOUSE): Promise<string[]> {
    const lenses = house.coffer.lsp.CodeLensProvider as CofferCodeLenses, document = house.document(path);
    const found: CodeLens[] = lenses.provideCodeLens(document);
    return found.map(lens => `${document.textDocument.getText(lens.range)}: ${lenses.resolve(lens).command!.title}`);
}

test('above a stock and a profile stands which rooms are built with it, through other profiles and under other names too', async () => {
    expect(await lensesOf('details/box.coffer')).toEqual(['box: used in den, tower']);
    expect(await lensesOf('yard.coffer')).toEqual(['pine-1x6: used in den, tower', 'pine-1x8: used in den, tower', 'pine-1x2: used in den, tower']);
    expect(await lensesOf('details/deeper.coffer')).toEqual(['deeper: used in no room', 'spare: used in no room']);
});

test('of many rooms the first are named; the line follows the house', async () => {
    const house = await openHouse({ 'rooms/tower.coffer': TOWER });
    const room = (name: string): string => TOWER.replace('room tower "Tower"', `room ${name}`);
    await house.edit({ 'rooms/tower.coffer': undefined, 'rooms/a.coffer': room('attic'), 'rooms/b.coffer': room('bath'), 'rooms/c.coffer': room('closet') });
    expect(await lensesOf('details/box.coffer', house)).toEqual(['box: used in 4 rooms: den, attic, bath …']);
    await house.edit({ 'rooms/a.coffer': undefined, 'rooms/b.coffer': undefined, 'rooms/c.coffer': undefined, 'rooms/den.coffer': undefined });
    expect(await lensesOf('details/box.coffer', house)).toEqual(['box: used in no room']);
});

test('a name that is half typed has no line above it, and costs nobody else theirs', async () => {
    const house = await openHouse({ 'half.coffer': 'edition 1\nstock { size 1x6 }\nstock whole { size 1x6 }\nprofile' });
    expect(await lensesOf('half.coffer', house)).toEqual(['whole: used in no room']);
});

const hierarchy = HOUSE.coffer.lsp.CallHierarchyProvider!;
async function itemAt(path: string, marked: string): Promise<CallHierarchyItem> {
    const { document, position, textDocument } = placeIn(HOUSE, path, marked);
    const [item, ...others] = (await hierarchy.prepareCallHierarchy(document, { position, textDocument }))!;
    expect(others).toEqual([]);
    return item!;
}
async function usersOf(item: CallHierarchyItem): Promise<string[]> {
    return (await hierarchy.incomingCalls({ item }))!.map(({ from, fromRanges }) =>
        `${from.name} ${fromRanges.map(range => HOUSE.shared.workspace.LangiumDocuments.getDocument(uriOf(from.uri.slice(uriOf('').toString().length)))!.textDocument.getText(range)).join()}`);
}

test('who builds with a detail, step by step upwards, from its declaration and from a place that names it', async () => {
    const box = await itemAt('rooms/den.coffer', '    beams          «box');
    expect({ ...box, range: undefined }).toEqual({
        name: 'box', kind: 5, detail: 'profile', uri: uriOf('details/box.coffer').toString(), range: undefined,
        selectionRange: { start: { line: 3, character: 8 }, end: { line: 3, character: 11 } },
    });
    expect(await itemAt('details/box.coffer', 'profile «box')).toEqual(box);
    expect(await usersOf(box)).toEqual(['deeper box', 'den box,box', 'tower tower-box']);
    expect(await usersOf(await itemAt('yard.coffer', 'stock «pine-1x8'))).toEqual(['box pine-1x8']);
});

test('what a detail is built with, step by step downwards', async () => {
    const madeOf = async (item: CallHierarchyItem): Promise<string[]> => (await hierarchy.outgoingCalls({ item }))!.map(({ to, fromRanges }) => `${to.name} ${fromRanges.length}`);
    expect(await madeOf(await itemAt('rooms/den.coffer', 'room «den'))).toEqual(['box 2']);
    expect(await madeOf(await itemAt('details/box.coffer', 'profile «box'))).toEqual(['pine-1x8 1', 'pine-1x6 3', 'pine-1x2 1']);
});

test('a word of the language has no users to show, and what is gone has none', async () => {
    const { document, position, textDocument } = placeIn(HOUSE, 'rooms/den.coffer', '    «through');
    expect(await hierarchy.prepareCallHierarchy(document, { position, textDocument })).toEqual([]);
    const box = await itemAt('details/box.coffer', 'profile «box');
    expect(await hierarchy.incomingCalls({ item: { ...box, name: 'gone' } })).toBeUndefined();
});
