import type { CompletionItem } from 'vscode-languageserver-types';
import { describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Editor } from '../../../src/language/features/editor.ts';
import { TestWorkspace } from '../../support/workspace.ts';

const YARD = 'edition 1\nstock poplar { size 1x6 }\nstock oak { size 1x8 }\nprofile box(groove: Length = 1/4", wide: Stock = poplar) { sides { stock wide }; bottom { stock wide } }\n';

/** What is offered at the | in a text. */
async function at(marked: string, path = 'rooms/den.coffer', others: Readonly<Record<string, string>> = {}, editor?: Editor): Promise<CompletionItem[]> {
    const offset = marked.indexOf('|');
    const workspace = await TestWorkspace.open({ 'yard.coffer': YARD, ...others, [path]: marked.replace('|', '') });
    if (editor) Object.defineProperty(workspace.coffer, 'editor', { value: editor });
    const document = workspace.document(path);
    const list = await workspace.coffer.lsp.CompletionProvider!.getCompletion(
        document, { textDocument: { uri: document.textDocument.uri }, position: document.textDocument.positionAt(offset) },
    );
    return list?.items ?? [];
}
const labels = async (...from: Parameters<typeof at>) => (await at(...from)).toSorted((a, b) => (a.sortText! < b.sortText! ? -1 : 1)).map(item => item.label);

const ROOM = 'edition 1\nfrom "../yard.coffer" use poplar, box\nroom den {\n  fixture lamp light at 1\', 2\'\n  wall north 10\'\n';

test('a word without end is completed by nothing, at once', async () => {
    expect(await at(`edition 1\nlet ${'a-'.repeat(4000)}b|c = 1\n`)).toEqual([]);
});

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
        ['currencies', 'job "House" {\n  currency |\n}', ['"USD"', '"CAD"', '"EUR"', '"GBP"', '"AUD"', '"NZD"', '"CHF"', '"SEK"', '"NOK"', '"DKK"']],
        ['currencies between quotes', 'job "House" {\n  currency "E|"\n}', ['"USD"', '"CAD"', '"EUR"']],
        ['settings of a fence between quotes', 'stock s {\n  size 1x6\n  ripped-with "fence A"\n}\nprofile p {\n  sides {\n    rip 5 7/16" with "|"\n  }\n}', ['"fence A"']],
        ['who sells it, half typed', 'stock s {\n  supplier "Mill"\n}\nstock t {\n  supplier "M|\n}', ['"Mill"']],
        ['a client', 'job "House" {\n  client "|"\n}', []],
    ])('%s', async (_, marked, expected) => {
        const offered = await labels(marked);
        expect(offered).toEqual(expect.arrayContaining([...expected]));
        if (expected.length === 0) expect(offered).toEqual([]);
    });

    test('what is right and nothing else', async () => {
        expect(await labels('profile p {\n  sides {\n    corners |\n  }\n}')).toEqual(['mitered', 'butted']);
        expect(await labels(`${ROOM}  grid {\n    beams |\n  }\n}`)).toEqual(['box']);
        expect(await labels('profile p(groove: Length) {\n  sides {\n    held-down |\n  }\n}')).toEqual(['groove', '1/4"']);
        expect(await labels('stock s {\n  price 2.70 USD |\n}')).toEqual(['per', 'for']);
    });

    test('what fits stands before what only leads to it, and that before what has to be fetched', async () => {
        expect(await labels('profile p(wide: Stock, groove: Length) {\n  sides {\n    held-down |\n  }\n}')).toEqual(['groove', '1/4"', 'wide']);
        expect(await labels('stock own { size 1x6 }\nprofile p {\n  sides {\n    stock |\n  }\n}')).toEqual(['own', 'poplar', 'oak']);
    });

    describe('names that need not be declared', () => {
        const GRID = `${ROOM}  grid { coffers-north 3; coffers-east 2 }\n`;
        test.each<[string, string, readonly string[]]>([
            ['lines', `${GRID}  line |\n}`, ['1', '2', 'A']],
            ['crossings', `${GRID}  crossing |\n}`, ['A1', 'A2']],
            ['the lines of a crossing', `${GRID}  crossing A2 { through | }\n}`, ['A', '2']],
            ['where a line that runs north-south ends', `${GRID}  line 2 { until | }\n}`, ['A', 'wall-north', 'wall-south']],
            ['where a line that runs east-west begins', `${GRID}  line A { from | }\n}`, ['1', '2', 'wall-west', 'wall-east']],
            ['as many as are placed', `${ROOM}  grid { lines-north 3', 6', 9' }\n  line |\n}`, ['1', '2', '3']],
            ['fence settings', 'stock a { ripped-with "fence A" }\nstock b { ripped-with | }', ['"fence A"']],
        ])('%s', async (_, marked, expected) => expect(await labels(marked)).toEqual(expected));
    });

    describe('what another file has', () => {
        /** The text after a choice and all that comes with it. */
        async function chosen(marked: string, label: string): Promise<string> {
            const item = (await at(marked)).find(each => each.label === label);
            if (!item?.textEdit || !('range' in item.textEdit)) throw new Error(`${label} is not offered`);
            const text = TextDocument.create('', '', 0, marked.replace('|', ''));
            return TextDocument.applyEdits(text, [item.textEdit, ...item.additionalTextEdits ?? []]);
        }
        const USES = 'profile p {\n  sides { stock oa| }\n}\n';
        test.each([
            ['into the line that is there', `edition 1\nfrom "../yard" use poplar // the yard\n${USES}`, 'edition 1\nfrom "../yard" use poplar, oak // the yard\n'],
            ['under the edition', `edition 1 // the first\n\n${USES}`, 'edition 1 // the first\nfrom "../yard.coffer" use oak\n\n'],
            ['at the top', USES, 'from "../yard.coffer" use oak\n'],
            ['under other imports', `edition 1\nfrom "./gone" use a\n\n${USES}`, 'edition 1\nfrom "./gone" use a\nfrom "../yard.coffer" use oak\n\n'],
            ['under a line that is broken', `edition 1\nfrom "../yard" use\n${USES}`, 'edition 1\nfrom "../yard" use\nfrom "../yard.coffer" use oak\n'],
            ['with the line ends of the file', `edition 1\r\n${USES}`, 'edition 1\r\nfrom "../yard.coffer" use oak\r\n'],
        ])('%s', async (_, text, head) => expect(await chosen(text, 'oak')).toBe(`${head}${USES.replace('oa|', 'oak')}`));

        test('says where it comes from, and stands last', async () => {
            const item = (await at(USES)).find(({ label }) => label === 'oak')!;
            expect(item).toMatchObject({ detail: 'from "../yard.coffer"', sortText: expect.stringMatching(/^2/) as string });
            expect(item.documentation).toMatchObject({ value: expect.stringContaining('Is taken from "../yard.coffer".') as string });
        });
        test('profiles, where a beam is wanted', async () => expect(await chosen('room den { grid { beams | } }', 'box')).toBe('from "../yard.coffer" use box\nroom den { grid { beams box } }'));
        test('rooms, in an alternate', async () => expect(await labels('alternate a { | }', 'alternates.coffer', { 'den.coffer': 'room den { }' })).toEqual(['den']));
        test('not under a name that is taken', async () => expect(await labels('stock oak { size 1x4 }\nprofile p { sides { stock | } }')).toEqual(['oak', 'poplar']));
        test('not where a ring would close', async () => {
            expect(await labels('profile p { sides { stock | } }', 'yard-2.coffer', { 'more.coffer': 'from "./yard-2" use p\nstock ash { size 1x6 }' })).toEqual(['poplar', 'oak']);
        });
    });

    describe('paths', () => {
        test('files, then folders', async () => {
            expect(await labels('from "|"', 'house/den.coffer', { 'details/deep/a.coffer': '' })).toEqual(['../details/deep/a.coffer', '../yard.coffer', '../details/', '../details/deep/']);
        });
        test('take the place of the whole path', async () => {
            const [item] = await at('from "../y|ard" use poplar');
            expect(item?.textEdit).toMatchObject({ range: { start: { line: 0, character: 6 }, end: { line: 0, character: 13 } } });
        });
    });

    test('an editor without snippets and markdown gets plain text', async () => {
        const items = await at('profile p {\n  |\n}', 'p.coffer', {}, { snippets: false, markdownInCompletion: false, markdownInHover: false, markdownInSignature: false });
        const item = items.find(({ label }) => label === 'cleats')!;
        expect(item.textEdit?.newText).toBe('cleats {\n    rip   from\n  }');
        expect(item.insertTextFormat).toBeUndefined();
        expect(item.documentation).toMatchObject({ kind: 'plaintext', value: 'cleats? : a block\n\nSmall strips inside the sides; the bottom is pressed against them.' });
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
        expect((await at('|')).find(each => each.label === 'labor')?.textEdit?.newText).toBe('labor {\n\t$1\n}');
    });

    test('what is chosen takes the place of what was typed', async () => {
        const [item] = await at('profile p {\n  sides {\n    corners mit|\n  }\n}');
        expect(item?.textEdit).toMatchObject({ range: { start: { line: 2, character: 12 }, end: { line: 2, character: 15 } }, newText: 'mitered' });
    });
});
