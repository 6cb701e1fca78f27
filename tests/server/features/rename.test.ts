import { describe, expect, test } from 'vitest';
import { applied, HOUSE, openHouse, placeIn } from './house.ts';

const MORE: Record<'yard.coffer' | 'details/box.coffer' | 'rooms/den.coffer', string> = {
    'yard.coffer': HOUSE['yard.coffer']!, 'details/box.coffer': HOUSE['details/box.coffer']!,
    'rooms/den.coffer': HOUSE['rooms/den.coffer']!.replace('use box', 'use box as beam').replace('beams          box', 'beams          beam(deep: oak)').replace('{ beams box }', '{ beams beam }')
        .replace('edition 1\n', 'edition 1\nfrom "../yard.coffer" use pine-1x8\n') + 'stock oak { size 1x8 }\nlet gap-width = 1/4"\n',
};
MORE['details/box.coffer'] = MORE['details/box.coffer'].replace('(deep: Stock = pine-1x8)', '(deep: Stock = pine-1x8, corners: Corners = mitered)').replace('sides { stock deep }', 'sides { stock deep; corners corners }');
const OPEN = await openHouse(MORE);

async function rename(path: string, marked: string, newName: string): Promise<Record<string, string>> {
    const { document, position, textDocument } = placeIn(OPEN, path, marked);
    const edit = await OPEN.coffer.lsp.RenameProvider!.rename(document, { textDocument, position, newName });
    return applied(OPEN, edit?.changes);
}

describe('a new name is refused, with the reason,', () => {
    test.each([
        ['a word of the language', 'details/box.coffer', 'profile «box', 'room', '`room` is a word of the language'],
        ['a word between things', 'details/box.coffer', 'profile «box', 'x', '`x` is a word of the language'],
        ['a type', 'details/box.coffer', 'profile «box', 'Length', '`Length` is what the language calls a kind of thing'],
        ['a word of the library that would be meant in its place', 'details/box.coffer', 'corner«s: Corners', 'butted', '`butted` is already a name here: builtin.coffer'],
        ['no name', 'details/box.coffer', '(«deep', '1st', '`1st` cannot be a name'],
        ['a name of the same file', 'yard.coffer', 'stock «pine-1x6', 'pine-1x2', '`pine-1x2` is already a name here: yard.coffer, line 4'],
        ['an import of the same file', 'details/box.coffer', 'profile «box', 'pine-1x6', '`pine-1x6` is already a name here: box.coffer, line 2'],
        ['a name of a file that imports it', 'yard.coffer', 'stock «pine-1x8', 'oak', '`oak` is already a name here: den.coffer, line 18'],
        ['another name that is taken in its own file', 'rooms/den.coffer', 'as «beam', 'oak', '`oak` is already a name here: den.coffer, line 18'],
        ['a parameter that would come between a stock and its use', 'details/box.coffer', '(«deep', 'pine-1x6', '`pine-1x6` is already a name here: yard.coffer, line 2'],
        ['a stock that a parameter would hide', 'yard.coffer', 'stock «pine-1x6', 'deep', '`deep` is already a name here: box.coffer, line 4'],
    ])('%s', async (_, path, marked, newName, reason) => {
        await expect(rename(path, marked, newName)).rejects.toThrow(reason);
    });
});

describe('a new name is taken', () => {
    test('everywhere, and nowhere else', async () => {
        const changed = await rename('yard.coffer', 'stock «pine-1x8', 'wide-pine');
        expect(changed['yard.coffer']).toBe(MORE['yard.coffer'].replace('stock pine-1x8', 'stock wide-pine'));
        expect(changed['details/box.coffer']).toBe(MORE['details/box.coffer'].replaceAll('pine-1x8', 'wide-pine'));
        expect(changed['rooms/den.coffer']).toBe(MORE['rooms/den.coffer'].replace('pine-1x8', 'wide-pine'));
    });
    test('of a parameter, in the arguments of other files too', async () => {
        const changed = await rename('details/box.coffer', '(«deep', 'sides-of');
        expect(changed['rooms/den.coffer']).toBe(MORE['rooms/den.coffer'].replace('deep: oak', 'sides-of: oak'));
        expect(changed['details/box.coffer']).toBe(MORE['details/box.coffer'].replaceAll('deep', 'sides-of'));
    });
    test('that another file has for something else, where the two do not meet', async () => {
        expect((await rename('details/box.coffer', 'profile «box', 'oak'))['rooms/den.coffer']).toContain('use oak as beam');
    });
    test('that is a word of the library too, where nobody could mean that', async () => {
        expect((await rename('yard.coffer', 'stock «pine-1x8', 'sugar-pine'))['yard.coffer']).toContain('stock sugar-pine');
    });
    test('that it has already', async () => expect(await rename('details/box.coffer', 'profile «box', 'box')).toEqual(MORE));
});
