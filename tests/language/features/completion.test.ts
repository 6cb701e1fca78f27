import type { CompletionItem } from 'vscode-languageserver-types';
import { describe, expect, test } from 'vitest';
import { TestWorkspace } from '../../support/workspace.ts';

const YARD = 'edition 1\nstock poplar { size 1x6 }\nstock oak { size 1x8 }\nprofile box(groove: Length = 1/4", wide: Stock = poplar) { sides { stock wide }; bottom { stock wide } }\n';

/** What is offered at the | in a text. */
async function at(marked: string, path = 'rooms/den.coffer'): Promise<CompletionItem[]> {
    const offset = marked.indexOf('|');
    const workspace = await TestWorkspace.open({ 'yard.coffer': YARD, [path]: marked.replace('|', '') });
    const document = workspace.document(path);
    const list = await workspace.coffer.lsp.CompletionProvider!.getCompletion(document, { textDocument: { uri: document.textDocument.uri }, position: document.textDocument.positionAt(offset) });
    return list?.items ?? [];
}
const labels = async (marked: string) => (await at(marked)).toSorted((a, b) => (a.sortText! < b.sortText! ? -1 : 1)).map(item => item.label);

const ROOM = 'edition 1\nfrom "../yard.coffer" use poplar, box\nroom den {\n  fixture lamp light at 1\', 2\'\n  wall north 10\'\n';

describe('completion', () => {
    test.each<[string, string, readonly string[]]>([
        ['the margin', '|', ['stock', 'profile', 'room', 'job', 'labor', 'bid', 'alternate', 'let', 'from', 'edition']],
        ['a file to import', 'from |', ['"../yard.coffer"']],
        ['a path between its quotes', 'from "../y|', ['../yard.coffer']],
        ['names of a file', 'from "../yard" use poplar, |', ['oak', 'box']],
        ['after a path', 'from "../yard.coffer" |', ['use']],
        ['a name being invented', 'stock |', []],
        ['a name from elsewhere, renamed', 'from "../yard" use poplar as |', []],
        ['the type of a parameter', 'profile p(wide: Sto|) { }', ['Length', 'Stock']],
        ['a default, by the type', 'from "../yard" use poplar, box\nprofile p(wide: Stock = |) { }', ['poplar']],
        ['what a profile is like', 'from "../yard" use poplar, box\nprofile p like |', ['box']],
        ['its arguments', 'from "../yard" use poplar, box\nprofile p(groove: Length = 1/8") like box(|)', ['groove', 'wide', 'groove']],
        ['the value of an argument', 'from "../yard" use poplar, box\nprofile p(deep: Stock = poplar) like box(wide: |)', ['deep', 'poplar']],
        ['what has to be said stands first', 'profile p {\n  |\n}', ['sides, bottom', 'sides', 'bottom']],
        ['not what has been said', 'profile p {\n  sides { stock s }\n  bottom { stock s }\n  |\n}', ['blocking', 'spacers', 'cleats', 'trim']],
        ['words by the expected type', 'profile p {\n  sides {\n    corners |\n  }\n}', ['mitered', 'butted']],
        ['modifiers that are missing', 'profile p {\n  sides {\n    nails 16 ga x 2" |\n  }\n}', ['every']],
        ['the sign of a pair', 'profile p {\n  sides {\n    nails 16 ga |\n  }\n}', ['x', 'every']],
        ['the values of a modifier', 'profile p {\n  sides {\n    rabbet 1/4" x 1/4" on |\n  }\n}', ['lower-back', 'lower-front', 'upper-back', 'upper-front']],
        ['a unit', 'stock s {\n  price 2.70 USD per |\n}', ['in', 'ft', 'mm', 'cm', 'm', 'min', 'h', 'day']],
        ['per, where a rate is wanted', 'stock s {\n  price 2.70 USD |\n}', ['per', 'for']],
        ['members', 'from "../yard" use poplar, box\nprofile p {\n  sides {\n    rip poplar.|\n  }\n}', ['size', 'species', 'width', 'thickness']],
        ['members of members', 'from "../yard" use poplar, box\nprofile p {\n  sides {\n    rip box.sides.|\n  }\n}', ['stock', 'rip', 'held-down']],
        ['parameters, where they fit', 'profile p(groove: Length = 1/4", wide: Stock) {\n  sides {\n    held-down |\n  }\n}', ['groove']],
        ['a dotted path', 'from "../yard" use box\nprofile p like box {\n  sides.|\n}', ['stock', 'held-down', 'corners']],
        ['in a room', `${ROOM}  |\n}`, ['ceiling', 'grid', 'wall', 'line', 'fixture', 'crossing']],
        ['walls that are not said', `${ROOM}  wall |\n}`, ['east', 'south', 'west']],
        ['profiles for beams', `${ROOM}  grid {\n    beams |\n  }\n}`, ['box']],
        ['fixtures', `${ROOM}  grid {\n    centered-on |\n  }\n}`, ['lamp']],
        ['what was measured', `${ROOM}  measured {\n    |\n  }\n}`, ['grid', 'spoiled', 'lamp', 'north', 'board']],
        ['rooms in an alternate', `${ROOM}}\nalternate a {\n  |\n}`, ['den']],
        ['paths across a room', `${ROOM}}\nalternate a {\n  den.grid.beams.|\n}`, ['sides', 'bottom']],
        ['the values at the end of such a path', `${ROOM}}\nalternate a {\n  den.grid.through |\n}`, ['north-south', 'east-west']],
        ['a line that runs on', 'profile p(groove: Length) {\n  sides {\n    rabbet 1/4" x\n      |\n  }\n}', ['groove']],
        ['a block that is not closed', 'profile p {\n  sides {\n    corners |', ['mitered', 'butted']],
        ['a line below a block that is not closed', 'profile p {\n  sides {\n    stock s\n  |', ['bottom']],
        ['a comment', 'profile p { // |\n}', []],
        ['a text', 'job "|" { }', []],
    ])('%s', async (_, marked, expected) => {
        const offered = await labels(marked);
        expect(offered).toEqual(expect.arrayContaining([...expected]));
        if (expected.length === 0) expect(offered).toEqual([]);
    });

    test('what is right and nothing else', async () => {
        expect(await labels('profile p {\n  sides {\n    corners |\n  }\n}')).toEqual(['mitered', 'butted']);
        expect(await labels(`${ROOM}  grid {\n    beams |\n  }\n}`)).toEqual(['box']);
        expect(await labels('profile p(groove: Length, wide: Stock) {\n  sides {\n    held-down |\n  }\n}')).toEqual(['groove']);
        expect(await labels('stock s {\n  price 2.70 USD |\n}')).toEqual(['per', 'for']);
    });

    test('words come with their documentation and their type', async () => {
        const item = (await at('profile p {\n  sides {\n    held|\n  }\n}')).find(each => each.label === 'held-down')!;
        expect(item.detail).toBe('Length');
        expect(item.documentation).toMatchObject({ kind: 'markdown', value: expect.stringContaining('below the ceiling') as string });
    });

    test('a block is written with what it cannot do without', async () => {
        const items = await at('profile p {\n  |\n}');
        const write = (label: string) => items.find(each => each.label === label)?.textEdit?.newText;
        expect(write('cleats')).toBe('cleats {\n\trip  $1 from $2\n}');
        expect(write('sides, bottom')).toBe('sides {\n\tstock  $1\n}\nbottom {\n\tstock  $2\n}');
        expect(write('require')).toBe('require $1 "$2"');
        expect((await at('|')).find(each => each.label === 'profile')?.textEdit?.newText).toBe('profile ${1:name} {\n\tsides {\n\t\tstock  $2\n\t}\n\tbottom {\n\t\tstock  $3\n\t}\n}');
    });

    test('what is chosen takes the place of what was typed', async () => {
        const [item] = await at('profile p {\n  sides {\n    corners mit|\n  }\n}');
        expect(item?.textEdit).toMatchObject({ range: { start: { line: 2, character: 12 }, end: { line: 2, character: 15 } }, newText: 'mitered' });
    });
});
