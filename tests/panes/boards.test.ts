import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { RoomOnPage } from '../../src/pages/page.ts';
import type { BoardsContent } from '../../src/pages/boards/content.ts';
import { contentMessage, roomOnPage, serve } from './support/content.ts';
import { inTheOneBrowser } from './support/one-browser.ts';
import { looks, PanePage } from './support/pane-page.ts';

const example = (path: string): string => readFileSync(new URL(`../../examples/${path}`, import.meta.url), 'utf8');
const house = {
    'yard.coffer': example('yard.coffer'), 'details/groove-box.coffer': example('details/groove-box.coffer'), 'details/plain-box.coffer': example('details/plain-box.coffer'),
    'quince-lane/house.coffer': example('quince-lane/house.coffer'), 'quince-lane/dining-room.coffer': example('quince-lane/dining-room.coffer'),
};
const dining = async (): Promise<RoomOnPage> => roomOnPage(await serve(house), 'quince-lane/dining-room.coffer');

inTheOneBrowser();

describe('the boards pane', () => {
    test.each(looks('boards', [300, 800, 1600]))('has nothing against it in %s at %i pixels', async (theme, width) => {
        const pane = await PanePage.open('boards', { theme, width, height: 900 });
        const [size] = (await pane.sent('size')).slice(-1);
        const message = contentMessage('boards', await dining(), size);
        await pane.say(message);
        const content = message.content as BoardsContent;
        await pane.say({ type: 'ticks', keys: content.stocks[0]!.boards[1]!.pieces.map(p => p.tick) });
        await pane.picture(`boards-${theme}-${width}`);
        expect(await pane.violations()).toEqual([]);
        await pane.page.click('#shows-steps');
        await pane.picture(`boards-steps-${theme}-${width}`);
        expect(await pane.violations()).toEqual([]);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('a click on a piece shows what is known of it, and leads on', async () => {
        const pane = await PanePage.open('boards', { width: 1000, height: 900 });
        await pane.say(contentMessage('boards', await dining()));
        await pane.page.click('[data-value="dining.side-1-2-east"]');
        expect(await pane.page.textContent('#card h3')).toContain('side-1-2-east');
        await pane.picture('boards-piece');
        expect(await pane.violations()).toEqual([]);
        await pane.page.click('#card [data-find]');
        expect(await pane.sent('find')).toMatchObject([{ kind: 'plan', key: 'dining.side-1-2-east' }]);
        await pane.page.click('#card [data-at]');
        expect(await pane.sent('select')).toHaveLength(1);
        await pane.page.click('#card [data-act="mark-spoiled"]');
        expect(await pane.sent('mark')).toMatchObject([{ as: 'spoiled', key: 'dining.side-1-2-east' }]);
        expect((await pane.sent('tick')).at(-1)).toMatchObject({ add: [], remove: [expect.stringMatching(/^dining\.side-1-2-east#/)] });
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('says how far the search for a cheaper plan has come, and in the end how good the plan is', async () => {
        const pane = await PanePage.open('boards', { theme: 'light', width: 800, height: 500 });
        const message = contentMessage('boards', await dining());
        const content = message.content as BoardsContent;
        await pane.say({ ...message, content: { ...content, proving: { done: 1, of: 3 } } as BoardsContent });
        expect(await pane.page.textContent('#proving label')).toBe('Looking for a cheaper plan: 1 of 3 stocks done');
        await pane.page.click('#stop-looking');
        expect(await pane.sent('stop')).toHaveLength(1);
        expect(await pane.page.getAttribute('#proof', 'value')).toBe('1');
        expect(await pane.violations()).toEqual([]);
        await pane.picture('boards-proving');
        await pane.say({ ...message, content: { ...content, known: 'None cheaper exists.', isProven: true } as BoardsContent });
        expect(await pane.page.locator('#proving').count()).toBe(0);
        expect(await pane.page.textContent('#known')).toBe('None cheaper exists.');
        await pane.picture('boards-proven');
        await pane.close();
    });

    test('ticking a board ticks off all that comes out of it, and writing it as cut asks for that board', async () => {
        const pane = await PanePage.open('boards', { width: 1000, height: 900 });
        const message = contentMessage('boards', await dining());
        await pane.say(message);
        const [board] = (message.content as BoardsContent).stocks[0]!.boards;
        await pane.page.click(`[data-act="tick-board"][data-board="${board!.key}"]`);
        expect(await pane.sent('tick')).toMatchObject([{ add: board!.pieces.map(p => p.tick), remove: [] }]);
        await pane.page.click(`[data-act="mark-cut"][data-board="${board!.key}"]`);
        expect(await pane.sent('mark')).toMatchObject([{ as: 'cut', key: board!.key }]);
        await pane.close();
    });

    test('the pieces of all boards are walked through with the arrow keys, from one stop of the Tab key', async () => {
        const pane = await PanePage.open('boards', { width: 1000, height: 900 });
        await pane.say(contentMessage('boards', await dining()));
        expect(await pane.page.locator('[data-lies] .part[tabindex="0"]').count()).toBe(1);
        await pane.page.focus('[data-lies] .part[tabindex="0"]');
        const before = await pane.page.evaluate(() => document.activeElement?.getAttribute('data-key'));
        await pane.page.keyboard.press('ArrowRight');
        const after = await pane.page.evaluate(() => document.activeElement?.getAttribute('data-key'));
        expect(after).not.toBe(before);
        await pane.page.keyboard.press('Enter');
        expect(await pane.page.textContent('#card h3')).toContain(after!.replace(/^dining\./, ''));
        await pane.close();
    });
});
