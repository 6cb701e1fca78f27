import { describe, expect, test } from 'vitest';
import { boardsContentInSteps } from '../../src/pages/boards/content.ts';
import { boardsPage } from '../../src/pages/boards/page.ts';
import { BOARDS_STATE, isDone, renderBoards } from '../../src/pages/boards/render.ts';
import type { RoomOnPage } from '../../src/pages/page.ts';
import { NOTHING_SHOWN } from '../../src/pages/shared/shown.ts';
import { all, readXml } from '../drawing/support/xml.ts';
import { roomOnPage, serve } from '../panes/support/content.ts';
import { some } from '../support/full.ts';
import { HOSTILE } from './hostile.ts';
import { madeBy } from './made.ts';
import { atOnce } from '../../src/plain/steps.ts';
import { compareNames } from '../../src/takeoff/piece-order.ts';

const boardsContent = madeBy(boardsContentInSteps);

const yard = `edition 1
stock board-1x6 { size 1x6; lengths 8', 12', 16'; price 2.10 USD per ft }
stock board-1x8 { size 1x8; lengths 12', 16' }
stock strip-1x2 { size 1x2; lengths 8'; price 0.90 USD per ft }
profile box {
  blocking { stock board-1x6; screws #8 x 2 1/2" every 16" }
  spacers { stock board-1x6; height 5"; every 24" }
  sides { stock board-1x8; held-down 1/4"; rabbet 1/4" x 1/4" on lower-back; corners mitered; nails 16 ga x 2" every 12" }
  cleats { rip 3/4" x 3/4" from strip-1x2; nails 18 ga x 1 1/4" every 8" }
  bottom { stock board-1x6; gap 0" to 1/32"; ease 1/16"; biscuits 1 x #10 }
}
`;
const room = (name: string, title: string, more = ''): string => `edition 1
from "yard.coffer" use board-1x8, box
room ${name} ${JSON.stringify(title)} {
  wall north 13'
  wall east 11'
  wall south 13'
  wall west 11'
  grid {
    coffers-north 3
    coffers-east 2
    beams box
    through north-south
    perimeter { kind band; stock board-1x8 }
  }
${more}}
`;
const files = { 'yard.coffer': yard, 'den.coffer': room('den', 'Den'), 'hall.coffer': room('hall', 'Hall'), 'job.coffer': 'edition 1\njob "Plum Street 4" { }\n' };
const den = async (over: Partial<typeof files> = {}): Promise<RoomOnPage> => roomOnPage(await serve({ ...files, ...over }), 'den.coffer');

describe('the content of the boards', () => {
    test('holds every piece of every room of the house once, on a board and in its drawing', async () => {
        const page = await den();
        expect(page.house).toHaveLength(2);
        const content = boardsContent(page, {});
        const boards = content.stocks.flatMap(s => s.boards);
        const ids = page.house.flatMap(({ takeOff }) => takeOff.pieces.map(p => p.id)).sort();
        expect(boards.flatMap(b => b.pieces.map(p => p.id)).sort()).toEqual(ids);
        const drawn = boards.flatMap(({ svg }) => all(readXml(svg))).flatMap(({ attributes }) => attributes['data-value'] ?? []);
        expect(drawn.sort()).toEqual(ids);
        expect(new Set(boards.map(b => b.key)).size).toBe(boards.length);
        expect(content.rooms.map(r => r.room)).toEqual(['den', 'hall']);
        expect(content.title).toBe('Plum Street 4');
    });

    test('says in plain words what is bought, how good the plan is known to be, and what has no price', async () => {
        const content = boardsContent(await den(), {});
        expect(content.known).toBe('A first plan; a cheaper one may exist.');
        expect(content.troubles).toEqual(['There is no price for board-1x8.']);
        expect(content.total).toMatch(/^\$[\d,.]+, without the boards that have no price$/);
        expect(content.buy.filter(row => row.stock === 'board-1x8').every(row => row.each === '' && row.cost === '')).toBe(true);
    });

    test('a board on hand says how its length is known', async () => {
        const page = await den({ 'yard.coffer': yard.replace("size 1x6; lengths 8', 12', 16'", `size 1x6; lengths 8', 12', 16'; on-hand 1 x 16' as told by "A & B"; on-hand 1 x 12'`) });
        const content = boardsContent(page, {}), boards = content.stocks.flatMap(stock => stock.boards);
        expect(boards.filter(({ from }) => from === 'on hand').map(({ length, there }) => `${length} ${there}`).sort(compareNames)).toEqual(["12' ", "16' told by A & B"]);
        expect(boards.filter(({ from, there }) => from !== 'on hand' && there !== '')).toEqual([]);
        const { text } = renderBoards(content, BOARDS_STATE, NOTHING_SHOWN);
        expect(text.split('<span class="soft">on hand, told by A &amp; B</span>')).toHaveLength(2);
        expect(text.split('<span class="soft">on hand</span>')).toHaveLength(2);
    });

    test('a host that has looked further is believed, and its progress shown', async () => {
        const page = await den();
        const plan = boardsContent(page, {});
        const known: RoomOnPage = Object.create(
            page, { boards: { value: { plan: { stocks: [], costs: [], unpriced: [], unplaced: [] }, proving: { done: 1, of: 3 } } } },
        ) as RoomOnPage;
        expect(plan.proving).toBeNull();
        const content = boardsContent(known, {});
        expect(content).toMatchObject({ proving: { done: 1, of: 3 }, stocks: [] });
    });

    test('leads from every piece and stock to its words', async () => {
        const workspace = await serve(files);
        const content = boardsContent(roomOnPage(workspace, 'den.coffer'), {});
        const piece = content.stocks.flatMap(s => s.boards).flatMap(b => b.pieces).find(p => p.id === 'den.side-1-1-east')!;
        expect(workspace.words(content.sources[piece.at]!)).toBe('sides');
        expect(content.stocks.map(s => workspace.words(content.sources[s.at]!))).toEqual(['board-1x6', 'board-1x8', 'strip-1x2']);
    });

    test('is plain data, the same for the same text, and says nothing of the machine in its markup', async () => {
        const content = boardsContent(await den(), { width: 600 });
        expect(JSON.parse(JSON.stringify(content))).toEqual(content);
        expect(boardsContent(await den(), { width: 600 })).toEqual(content);
        expect(content.stocks.flatMap(s => s.boards).map(b => b.svg).join('')).not.toMatch(/file:|\.coffer\b/);
        for (const width of [20, 300, 5000]) expect(boardsContent(await den(), { width }).stocks[0]!.boards[0]!.svg).not.toMatch(/NaN|Infinity/);
    });

    test('what the job says is cut stands first, and is not cut again; a spoiled piece is', async () => {
        const more = '  measured {\n    cut 16\' of board-1x6 into bottom-1, blocking-A-1 left 12"\n    spoiled bottom-2\n  }\n';
        const content = boardsContent(await den({ 'den.coffer': room('den', 'Den', more).replace('use board-1x8', 'use board-1x6, board-1x8') }), {});
        const [first, ...others] = content.stocks[0]!.boards;
        expect([first!.from, first!.pieces.map(p => p.id).sort()]).toEqual(['already cut', ['den.blocking-A-1', 'den.bottom-1']]);
        expect(isDone(first!, NOTHING_SHOWN)).toBe(true);
        const rest = others.flatMap(b => b.pieces.map(p => p.id));
        expect(rest).not.toContain('den.bottom-1');
        expect(rest.filter(id => id === 'den.bottom-2')).toHaveLength(2);
        expect(content.stages.flatMap(s => s.steps).flatMap(s => s.lines).join(' ')).not.toMatch(/den\.bottom-1\b/);
    });
});

describe('the boards as markup', () => {
    test.each(some(HOSTILE, 3))('shows a name as text: %s', async name => {
        const page = await den({ 'den.coffer': room('den', name.replace(/["\\]/g, '')), 'job.coffer': `edition 1\njob ${JSON.stringify(name.replace(/["\\]/g, ''))} { }\n` });
        for (const shows of ['boards', 'steps'] as const) {
            const { text } = renderBoards(boardsContent(page, {}), { ...BOARDS_STATE, shows }, NOTHING_SHOWN);
            // what stands between quotes is text
            expect(text.replace(/"[^"]*"/g, '""')).not.toMatch(/<script|<img|<[^<>]*\s(on\w+|style)=/i);
        }
        for (const make of Object.values(boardsPage.exports)) {
            const { bytes, name: file } = await atOnce(make(page, undefined));
            expect(file).toMatch(/^(boards|labels)(-[\p{Ll}\p{Lo}\p{M}\p{N}-]+)?\.\w+$/u);
            if (/(html|svg)$/.test(file)) expect(String(bytes)).not.toMatch(/<script|<img src=x|<svg onload/i);
        }
    });

    test('hides what is done: a board all of whose pieces are ticked off, a step that is', async () => {
        const content = boardsContent(await den(), {});
        const [board] = content.stocks[0]!.boards, [step] = content.stages[0]!.steps;
        const ticks = new Set([...board!.pieces.map(p => p.tick), step!.key]);
        const shown = (shows: 'boards' | 'steps', hideDone: boolean): string => renderBoards(content, { ...BOARDS_STATE, shows, hideDone }, { ticks, lit: new Set() }).text;
        expect(shown('boards', false)).toContain(`id="${board!.key}"`);
        expect(shown('boards', true)).not.toContain(`id="${board!.key}"`);
        expect(shown('steps', false)).toContain(`id="${step!.key}"`);
        expect(shown('steps', true)).not.toContain(`id="${step!.key}"`);
        expect(shown('boards', false)).toContain(`1 of ${content.stocks.flatMap(s => s.boards).length} boards cut`);
    });

    test('on paper: every board once, the order of the work, no controls', async () => {
        const page = await den();
        const html = String((await atOnce(boardsPage.exports.html!(page, undefined))).bytes);
        expect(html.match(/<figure class="board">/g)).toHaveLength(boardsContent(page, {}).stocks.flatMap(s => s.boards).length);
        expect(html).toContain('Order of the saw');
        expect(html).not.toMatch(/<button|https?:\/\/(?!www\.w3\.org\/2000\/svg")/);
        const svg = String((await atOnce(boardsPage.exports.svg!(page, undefined))).bytes);
        expect(all(readXml(svg)).flatMap(({ attributes }) => attributes['data-piece'] ?? []).length).toBeGreaterThan(100);
    });

    test('of very many boards the first are drawn, and the pieces of the others are told with their marks', async () => {
        const wide = room('hall', 'Hall').replace(/13'/g, "50'").replace(/11'/g, "48'").replace('coffers-north 3', 'coffers-north 12').replace('coffers-east 2', 'coffers-east 11');
        const content = boardsContent(roomOnPage(await serve({ ...files, 'hall.coffer': wide }), 'hall.coffer', 'hall'), {}), boards = content.stocks.flatMap(stock => stock.boards);
        expect(boards.length).toBeGreaterThan(250);
        expect(boards.filter(({ svg }) => svg !== '')).toEqual(boards.slice(0, 250));
        for (const { small, pieces } of boards.slice(250)) expect(small).toHaveLength(pieces.length);
        expect(renderBoards(content, BOARDS_STATE, NOTHING_SHOWN).text).toContain('Not drawn, since there are so many boards:');
    });
});
