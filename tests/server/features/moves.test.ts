import { describe, expect, test } from 'vitest';
import { uriOf, type TestWorkspace } from '../../support/workspace.ts';
import { applied, HOUSE, openHouse } from './house.ts';

/** Moves files or folders as an editor does: asks first, makes the edits, then moves. Returns the texts by their new paths. */
async function move(house: TestWorkspace, ...moves: readonly [from: string, to: string][]): Promise<Record<string, string>> {
    const paths = Object.keys(HOUSE);
    const edit = await house.shared.lsp.FileOperationHandler!.willRenameFiles!({
        files: moves.map(([from, to]) => ({ oldUri: uriOf(from).toString(), newUri: uriOf(to).toString() })),
    });
    const texts = applied(house, edit?.changes, paths);
    const placeOf = (path: string): string => {
        for (const [from, to] of moves) if (path === from || path.startsWith(`${from}/`)) return to + path.slice(from.length);
        return path;
    };
    const moved = Object.fromEntries(paths.map(path => [placeOf(path), texts[path]!]));
    await house.edit({ ...Object.fromEntries(paths.filter(path => placeOf(path) !== path).map(path => [path, undefined])), ...moved });
    return moved;
}
const imports = (text: string | undefined): string[] => text?.match(/^from "[^"]*"/gm) ?? [];

describe('imports are mended when', () => {
    test.each([
        ['a file moves that others use', [['yard.coffer', 'stocks/yard.coffer']], { 'details/box.coffer': ['from "../stocks/yard.coffer"'], 'rooms/den.coffer': ['from "../details/box"'] }],
        ['a file gets another name, and its import has no suffix', [['details/box.coffer', 'details/plain box.coffer']], { 'details/plain box.coffer': ['from "../yard.coffer"'], 'rooms/den.coffer': ['from "../details/plain box"'] }],
        ['a file moves that uses others', [['rooms/den.coffer', 'den.coffer']], { 'den.coffer': ['from "./details/box"'] }],
        ['a file moves that uses and is used', [['details/box.coffer', 'box.coffer']], { 'box.coffer': ['from "./yard.coffer"'], 'rooms/den.coffer': ['from "../box"'] }],
        ['a folder moves', [['details', 'shop/drawings']], { 'shop/drawings/box.coffer': ['from "../../yard.coffer"'], 'rooms/den.coffer': ['from "../shop/drawings/box"'] }],
        ['two change at once', [['details', 'shop'], ['yard.coffer', 'shop/yard.coffer']], { 'shop/box.coffer': ['from "./yard.coffer"'], 'rooms/den.coffer': ['from "../shop/box"'] }],
    ] as [string, [string, string][], Record<string, string[]>][])('%s', async (_, moves, expected) => {
        const house = await openHouse();
        const texts = await move(house, ...moves);
        for (const [path, lines] of Object.entries(expected)) expect(imports(texts[path]), path).toEqual(lines);
        for (const path of Object.keys(texts)) expect(house.rules(path).filter(rule => /import|unknown/.test(rule)), path).toEqual([]);
    });
});

test('nothing is edited where nothing changes', async () => {
    const house = await openHouse();
    const rename = (from: string, to: string) =>
        house.shared.lsp.FileOperationHandler!.willRenameFiles!({ files: [{ oldUri: uriOf(from).toString(), newUri: uriOf(to).toString() }] });
    expect(await rename('rooms/den.coffer', 'rooms/study.coffer')).toBeNull();
    expect(await rename('notes.txt', 'rooms/notes.txt')).toBeNull();
    expect(await rename('', '/cottage')).toBeNull();
    expect(await rename('yard.coffer', 'yard.txt')).toBeNull();
});
