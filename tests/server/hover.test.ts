import type { Hover } from 'vscode-languageserver-types';
import { beforeAll, describe, expect, test } from 'vitest';
import { THEMES } from '../../src/drawing/themes.ts';
import { createServerServices } from '../../src/server/services.ts';
import { TestWorkspace } from '../support/workspace.ts';

const YARD = `edition 1
stock poplar-6 { size 1x6; species yellow-poplar }
stock poplar-8 { size 1x8; species yellow-poplar }
stock strip { size 1x2; species yellow-poplar }
`;
const BOX = `edition 1
from "./yard.coffer" use poplar-6, poplar-8, strip
/** A beam for small rooms. */
profile box(groove: Length = 1/4", deep: Stock = poplar-8) {
  blocking { stock poplar-6 }
  sides { stock deep; held-down 1/4"; rabbet groove x 1/4" on lower-back }
  cleats { rip 3/4" x 3/4" from strip }
  bottom { stock poplar-6; rip poplar-6.width - 1/32" }
}
`;
const DEN = `edition 1
from "./yard.coffer" use strip, poplar-6
from "./box.coffer" use box
room den "Den" {
  wall north 12'
  wall east 10'
  wall south 12'
  wall west 10'
  grid {
    coffers-north 3
    coffers-east 2
    beams box
    through north-south
  }
  line 2 { beams box(deep: poplar-6) }
}
alternate more { den.grid.coffers-north 4 }
`;
const SHALLOW = DEN.replace('  line 2 { beams box(deep: poplar-6) }\n', '').replace('beams box', 'beams box(groove: 1/8", deep: poplar-6)');

let client: ReturnType<typeof createServerServices>['client'];
let workspace: TestWorkspace;

async function open(den = DEN): Promise<void> {
    workspace = await TestWorkspace.serve({ 'yard.coffer': YARD, 'box.coffer': BOX, 'den.coffer': den }, context => {
        const services = createServerServices(context);
        ({ client } = services);
        client.markdownInHover = true;
        return services;
    });
}

/** What is shown at the word between « and ». */
async function hover(marked: string, path = 'den.coffer'): Promise<string> {
    const text = workspace.text(path);
    const offset = text.indexOf(marked.replace(/[«»]/g, ''));
    if (offset < 0) throw new Error(`${marked} is not in ${path}`);
    const document = workspace.document(path);
    const found: Hover | undefined = await workspace.coffer.lsp.HoverProvider!.getHoverContent(document, { textDocument: { uri: document.textDocument.uri }, position: document.textDocument.positionAt(offset + marked.indexOf('«')) });
    return found ? (found.contents as { value: string }).value : '';
}
const picture = (text: string) => /!\[section\]\(data:image\/svg\+xml;base64,([^)]*)\)/.exec(text)?.[1];

describe('hover in a room that is laid out', () => {
    beforeAll(() => open(SHALLOW));
    test('coffers along a wall, and the sum', async () => {
        // 12' less two beams of 7" (5 1/2" and two sides of 3/4") leaves 130", a third of which is 43 1/3"
        expect(await hover('«coffers-north»')).toContain(`3 coffers along the north wall, 3' 7 5/16" to 3' 7 11/32" clear: wall 12' - 2 x line 7" = 10' 10"`);
        expect(await hover('«coffers-east»')).toContain(`2 coffers along the east wall, each 4' 8 1/2" (1435.1 mm) clear: wall 10' - line A 7" = 9' 5"`);
        expect(await hover('«wall» north')).toContain('3 coffers along the north wall');
        expect(await hover('«grid»')).toMatch(/along the north wall.*\n\n2 coffers along the east wall/);
    });
    test('a beam: depth, width and fit, with the sums', async () => {
        expect(await hover('«beams»')).toContain([
            '- 5 3/4" (146.05 mm) deep: held down 1/4" + side 5 1/2" = 5 3/4"',
            '- 7" (177.8 mm) wide: blocking 5 1/2" + 2 x side 3/4" = 7"',
            '- bottom 1/32" play in all: blocking 5 1/2" - bottom 5 15/32" = 1/32"',
        ].join('\n'));
    });
    test('a profile as it is called, and by its defaults', async () => {
        expect(await hover('beams «box»(')).toContain('- 5 3/4" (146.05 mm) deep');
        expect(await hover('use «box»')).toContain('- 7 1/2" (190.5 mm) deep');
        expect(await hover('profile «box»', 'box.coffer')).toContain('- 7 1/2" (190.5 mm) deep: held down 1/4" + side 7 1/4" = 7 1/2"');
    });
    test('its section is drawn, small', async () => {
        const drawn = picture(await hover('profile «box»', 'box.coffer'))!;
        expect(drawn.length).toBeLessThan(60_000);
        const svg = Buffer.from(drawn, 'base64').toString();
        expect(svg).toMatch(/^<svg [^>]*>[\s\S]*<\/svg>\s*$/);
        expect(svg).toContain('7" wide and 7 1/2" deep.');
        expect(picture(await hover('beams «box»('))).not.toBe(drawn);
    });
    test('beside its words where the editor can, in its colors where it tells them', async () => {
        const svg = async (): Promise<string> => Buffer.from(picture(await hover('profile «box»', 'box.coffer'))!, 'base64').toString();
        const onWhite = await svg();
        expect(onWhite).toContain('class="f-paper"');
        try {
            client.take('dark');
            client.tablesInMarkdown = true;
            expect(await hover('profile «box»', 'box.coffer')).toMatch(/<table><tr><td>\n\n!\[section\]\([^)]*\)\n\n<\/td><td>\n\n- 7 1\/2"[^<]*<\/td><\/tr><\/table>$/);
            const onDark = await svg(), inks = (text: string): string[] => [...text.matchAll(/\.p-cut\{[^}]*stroke:(#\w+)/g)].map(match => match[1]!);
            // only the ground is left out: the wood keeps its own
            expect(onDark.match(/class="f-paper" d="M0 0h/)).toBeNull();
            expect(inks(onDark)).toEqual([THEMES.dark.ink]);
            expect(inks(onWhite)).toEqual([THEMES.light.ink]);
            client.take('purple');
            expect(await svg()).toBe(onWhite);
        } finally {
            client.take(undefined);
            client.tablesInMarkdown = false;
        }
    });
    test('what is written about it is words, whatever signs are in them', async () => {
        const house = await TestWorkspace.serve({ 'box.coffer': '/** <b>Wide</b> `a<b` <img src="x"> */\nstock pine { size 1x6 }\n' }, context => {
            const services = createServerServices(context);
            services.client.markdownInHover = true;
            return services;
        });
        const document = house.document('box.coffer');
        const found = await house.coffer.lsp.HoverProvider!.getHoverContent(
            document, { textDocument: { uri: document.textDocument.uri }, position: { line: 1, character: 7 } },
        );
        expect((found!.contents as { value: string }).value).toContain('&lt;b&gt;Wide&lt;/b&gt; `a<b` &lt;img src="x"&gt;');
    });
    test('plain text for an editor that shows no more', async () => {
        client.markdownInHover = false;
        const text = await hover('profile «box»', 'box.coffer');
        client.markdownInHover = true;
        expect(text).toMatch(/^profile box\(groove: Length = 1\/4", deep: Stock = poplar-8\)\n\nA beam for small rooms\.\n\n- 7 1\/2" \(190\.5 mm\) deep/);
        expect(text).not.toMatch(/svg|`/);
    });
    test('the parts of a profile: what they decide', async () => {
        expect(await hover('«sides»', 'box.coffer')).toContain('beam 7 1/2" (190.5 mm) deep');
        expect(await hover('«bottom»', 'box.coffer')).toContain('bottom 1/32" play in all');
        expect(await hover('«blocking»', 'box.coffer')).toContain('beam 7" (177.8 mm) wide');
    });
    test('nothing of the room where an alternate changes it', async () => {
        expect(await hover('den.grid.«coffers-north»')).not.toContain('clear:');
    });
});

describe('hover on a line of its own', () => {
    test('its beam', async () => {
        await open(DEN.replace('box(deep: poplar-6)', 'box(groove: 1/8")'));
        expect(await hover('line «2»')).toContain('- 7 1/2" (190.5 mm) deep');
        expect(await hover('line 2 { «beams»')).toContain('- 7" (177.8 mm) wide');
    });
});

describe('never wrong while the file is broken', () => {
    test.each([
        ['a half line in the room', SHALLOW.replace('    through', '    coffers-\n    through')],
        ['a value that is missing', SHALLOW.replace('coffers-east 2', 'coffers-east')],
        ['a wall half typed', SHALLOW.replace('wall east 10\'', 'wall east 10\' +')],
        ['a name half typed', SHALLOW.replace('beams box(', 'beams bo(')],
    ])('%s', async (_, broken) => {
        await open(SHALLOW);
        await workspace.edit({ 'den.coffer': broken });
        for (const word of ['«coffers-north»', '«beams»', '«wall» north', '«grid»']) expect(await hover(word)).not.toMatch(/clear:|\) deep:/);
    });
    test('a profile that cannot be read has no size and no picture', async () => {
        await open(SHALLOW);
        await workspace.edit({ 'box.coffer': BOX.replace('held-down 1/4"', 'held-down 1/4" +') });
        const text = await hover('profile «box»', 'box.coffer');
        expect(text).toContain('A beam for small rooms.');
        expect(text).not.toMatch(/\) deep:|\) wide:/);
        expect(picture(text)).toBeUndefined();
        expect(await hover('beams «box»(')).not.toMatch(/\) deep:/);
    });
    test('a stock that cannot be read has no size', async () => {
        await open(SHALLOW);
        await workspace.edit({ 'yard.coffer': YARD.replace('stock poplar-6 { size 1x6;', 'stock poplar-6 { size 1x6; width 5 +;') });
        expect(await hover('stock «poplar-6»', 'yard.coffer')).not.toMatch(/dressed/i);
        expect(await hover('stock «poplar-6»', 'box.coffer')).not.toMatch(/dressed/i);
    });
    test('what follows from a value that cannot be read has none', async () => {
        const text = 'edition 1\nlet reveal = 1/4" + 1/8"\nprofile p(groove: Length = reveal) { sides { held-down reveal; rabbet groove x 1/4" on lower-back } }\n';
        const values = async () => [await hover('held«-down»', 'p.coffer'), await hover('rab«bet»', 'p.coffer'), await hover('held-down re«veal»', 'p.coffer'), await hover('«groove»: Length', 'p.coffer')].join();
        await open(SHALLOW);
        await workspace.edit({ 'p.coffer': text });
        expect((await values()).match(/3\/8"/g)?.length).toBeGreaterThanOrEqual(4);
        for (const broken of ['1/4" +', '1/4" + 1/8" "', '1/4" + 1/8', '1/4" + x 1/8"']) {
            await workspace.edit({ 'p.coffer': text.replace('1/4" + 1/8"\n', `${broken}\n`) });
            expect(await values(), broken).not.toMatch(/mm/);
        }
    });
    test('the text is ahead of the tree', async () => {
        await open(SHALLOW);
        const document = workspace.document('den.coffer');
        expect(await hover('«beams»')).not.toBe('');
        Object.defineProperty(document, 'textDocument', { value: { ...document.textDocument, getText: () => `// \n${SHALLOW}`, positionAt: document.textDocument.positionAt.bind(document.textDocument), offsetAt: document.textDocument.offsetAt.bind(document.textDocument) } });
        expect(await hover('«beams»')).toBe('');
    });
});
