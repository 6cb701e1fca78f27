import { describe, expect, test } from 'vitest';
import type { CutListContent } from '../../src/pages/cut-list/content.ts';
import type { ContentMessage } from '../../src/panes/messages.ts';
import { parlor } from '../pages/parlor.ts';
import { HOSTILE } from '../pages/hostile.ts';
import { some } from '../support/full.ts';
import { contentMessage, roomOnPage, serve } from './support/content.ts';
import { inTheOneBrowser } from './support/one-browser.ts';
import { looks, PanePage } from './support/pane-page.ts';

inTheOneBrowser();

async function listOf(text = parlor()): Promise<{ message: ContentMessage; content: CutListContent }> {
    const message = contentMessage('cut-list', roomOnPage(await serve({ 'parlor.coffer': text }), 'parlor.coffer'));
    return { message, content: message.content as CutListContent };
}
const keyOf = ({ cuts, pieces }: CutListContent, id: string): string => `${id}#${cuts[pieces.find(piece => piece.id === id)!.cut]!.print}`;
const lengths = (pane: PanePage): Promise<string[]> => pane.page.locator('.entry .long').allTextContents();

describe('the cut list pane', () => {
    test.each(looks('cut-list'))('has nothing against it in %s at %i pixels', async (theme, width) => {
        const { message, content } = await listOf();
        const pane = await PanePage.open('cut-list', { theme, width, height: width === 300 ? 700 : 900 });
        await pane.say(message);
        await pane.say({ type: 'ticks', keys: [...content.pieces.slice(0, 9).map(({ id }) => keyOf(content, id)), 'parlor.side-A-1-north#600000.600000.x', 'parlor.side-C-1-north#1.1.x'] });
        await pane.say({ type: 'selection', keys: content.pieces.filter(({ id }) => id.includes('.side-')).map(({ id }) => id), reveal: false });
        await pane.page.locator('.open-why').nth(1).click();
        await pane.picture(`cut-list-${theme}-${width}`);
        expect(await pane.violations()).toEqual([]);
        for (const name of ['#totals', '#how']) await pane.page.locator(`${name} > summary`).click();
        expect(await pane.violations()).toEqual([]);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('is sorted by a click on a head, and says how', async () => {
        const { message } = await listOf();
        const pane = await PanePage.open('cut-list');
        await pane.say(message);
        await pane.page.selectOption('#group', 'none');
        const longFirst = await lengths(pane);
        await pane.page.click('#sort-length');
        expect((await lengths(pane))[0]).toBe(longFirst.at(-1));
        expect(await pane.page.locator('th[aria-sort=ascending]').textContent()).toContain('Length');
        expect(await pane.page.locator('[role=status]').textContent()).toBe('Sorted by Length, ascending');
        await pane.page.click('#sort-part');
        expect(await pane.page.locator('.entry .part-name').first().textContent()).toBe('Blocking');
        // kept over a reload
        expect(await pane.kept()).toMatchObject({ own: { sort: 'part', descending: false, group: 'none' } });
        await pane.close();
    });

    test('ticks pieces off one by one and in a batch, by the keyboard too', async () => {
        const { message, content } = await listOf();
        const pane = await PanePage.open('cut-list');
        await pane.say(message);
        await pane.page.fill('#find', 'spacer');
        const spacers = content.pieces.filter(({ id }) => id.includes('.spacer-')).map(({ id }) => id);
        expect(await pane.page.locator('[role=status]').textContent()).toBe(`${spacers.length} pieces shown`);
        await pane.page.locator('.entry .tick input').first().focus();
        await pane.page.keyboard.press('Space');
        const [batch] = await pane.sent('tick');
        expect(batch).toMatchObject({ add: spacers.map(id => keyOf(content, id)), remove: [] });
        expect(await pane.page.locator('[role=status]').textContent()).toBe(`${spacers.length} of ${content.pieces.length} pieces cut`);

        await pane.say({ type: 'ticks', keys: batch!.add });
        expect(await pane.page.locator('.entry .tick input').first().isChecked()).toBe(true);
        await pane.forget();
        await pane.page.locator('.open-why').first().click();
        await pane.page.locator('.one .tick input').nth(2).click();
        expect((await pane.sent('tick'))[0]).toMatchObject({ add: [], remove: [keyOf(content, spacers[2]!)] });
        await pane.say({ type: 'ticks', keys: batch!.add.filter(key => key !== keyOf(content, spacers[2]!)) });
        expect(await pane.page.locator('.entry .tick input').first().evaluate(box => (box as HTMLInputElement).indeterminate)).toBe(true);
        // up and down the boxes
        await pane.page.locator('.entry .tick input').first().focus();
        for (const key of ['ArrowDown', 'ArrowDown', 'ArrowDown']) await pane.page.keyboard.press(key);
        expect(await pane.page.evaluate(() => document.activeElement?.getAttribute('data-piece'))).toBe(spacers[2]);
        await pane.page.keyboard.press('Home');
        expect(await pane.page.evaluate(() => document.activeElement?.hasAttribute('data-piece'))).toBe(false);
        await pane.close();
    });

    test('what has changed since it was cut stays to be cut, and what is gone can be forgotten', async () => {
        const before = (await listOf()).content, { message, content } = await listOf(parlor().replace('rabbet 1/4"', 'rabbet 3/16"'));
        const pane = await PanePage.open('cut-list');
        await pane.say(message);
        const old = keyOf(before, 'parlor.side-A-1-north');
        await pane.say({ type: 'ticks', keys: [old, 'parlor.side-Z-1-north#1.1.x'] });
        await pane.page.fill('#find', 'side-a-1-north');
        expect(await pane.page.locator('.changed').textContent()).toBe('changed since cut');
        expect(await pane.page.locator('.entry .tick input').isChecked()).toBe(false);
        await pane.page.locator('.entry .tick input').click();
        expect((await pane.sent('tick'))[0]).toMatchObject({ add: [keyOf(content, 'parlor.side-A-1-north')], remove: [old] });
        await pane.forget();
        await pane.page.click('[data-act=forget]');
        expect((await pane.sent('tick'))[0]).toMatchObject({ add: [], remove: ['parlor.side-Z-1-north#1.1.x'] });
        await pane.close();
    });

    test('leads to the plan, to the words, and shows what was picked elsewhere', async () => {
        const { message, content } = await listOf();
        const pane = await PanePage.open('cut-list');
        await pane.say(message);
        await pane.say({ type: 'picked', key: 'parlor.cleat-B-2-south' });
        const row = pane.page.locator('tr.one.picked');
        expect(await row.locator('.mark').textContent()).toBe('cleat-B-2-south');
        expect(await row.isVisible()).toBe(true);
        await row.locator('[data-find=plan]').click();
        expect((await pane.sent('find'))[0]).toMatchObject({ kind: 'plan', key: 'parlor.cleat-B-2-south' });
        await row.locator('.mark').click();
        expect((await pane.sent('pick'))[0]).toMatchObject({ key: 'parlor.cleat-B-2-south' });
        expect((await pane.sent('select'))[0]!.at).toEqual(content.sources[content.pieces.find(({ id }) => id === 'parlor.cleat-B-2-south')!.at]);
        // it stays picked while the cursor is in its words, and no longer
        await pane.say({ type: 'selection', keys: content.pieces.filter(({ id }) => id.includes('.cleat-')).map(({ id }) => id), reveal: false });
        expect(await pane.page.locator('tr.one.picked').count()).toBe(1);
        await pane.say({ type: 'selection', keys: ['parlor.band-north'], reveal: false });
        expect(await pane.page.locator('.picked').count()).toBe(0);
        await pane.close();
    });

    test('of thousands of rows only those near the eye are in the page; scrolling and finding reach all', async () => {
        const large = parlor().replaceAll('13\' 2"', '90\'').replaceAll('11\'', '80\'').replace('coffers-north 3', 'coffers-north 16').replace('coffers-east 3', 'coffers-east 16');
        const { message, content } = await listOf(large);
        expect(content.pieces.length).toBeGreaterThan(3000);
        const pane = await PanePage.open('cut-list', { width: 1000 });
        await pane.say(message);
        await pane.page.click('#together');
        expect(await pane.page.locator('#list tr').count()).toBeLessThan(400);
        const scrolled = (to: number) => pane.page.evaluate(async part => {
            const list = document.getElementById('list')!;
            list.scrollTop = list.scrollHeight * part;
            await new Promise(resolve => requestAnimationFrame(() => setTimeout(resolve, 50)));
            const { top, bottom } = list.getBoundingClientRect();
            return [top + 60, (top + bottom) / 2, bottom - 10].map(y => document.elementFromPoint(200, y)?.closest('tr')?.getAttribute('aria-rowindex') ?? null);
        }, to);
        for (const part of [0.3, 0.7, 0.2, 1]) expect((await scrolled(part)).every(index => index !== null), `nothing to see at ${part}`).toBe(true);
        await pane.say({ type: 'picked', key: content.pieces[1700]!.id });
        expect(await pane.page.locator('tr.picked').isVisible()).toBe(true);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('hostile names are text', async () => {
        const pane = await PanePage.open('cut-list', { width: 300 });
        for (const name of some(HOSTILE, 3)) {
            await pane.say((await listOf(parlor({ title: name.replace(/["\\]/g, '') }))).message);
            expect(await pane.page.evaluate(() => [document.title, document.querySelectorAll('main script, main img, main iframe').length])).toEqual(['cut-list', 0]);
            expect(await pane.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(300);
        }
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });
});
