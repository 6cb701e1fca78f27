import { createHash } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import type { ChangedInView } from '../../src/pages/view/changed.ts';
import type { ViewContent } from '../../src/pages/view/content.ts';
import type { ContentMessage } from '../../src/panes/messages.ts';
import { EXAMPLES } from '../support/examples.ts';
import { beforeTheyChangedTheirMinds, changesSince, COMMIT } from './support/changed.ts';
import { contentMessage, roomOnPage, serve } from './support/content.ts';
import { inTheOneBrowser } from './support/one-browser.ts';
import { looks, PanePage, type PaneOptions } from './support/pane-page.ts';

let message: ContentMessage, content: ViewContent, changed: ChangedInView;
beforeAll(async () => {
    const room = roomOnPage(await serve(EXAMPLES), 'quince-lane/library.coffer');
    message = contentMessage('view', room, { changes: await changesSince(beforeTheyChangedTheirMinds(EXAMPLES), EXAMPLES, room) });
    content = message.content as ViewContent;
    changed = content.changes as ChangedInView;
});
inTheOneBrowser();

const frames = (pane: PanePage): Promise<number> => pane.page.evaluate(() => Number(document.querySelector('canvas')?.dataset['frames'] ?? 0));
const drawnSince = (pane: PanePage, before: number) => pane.page.waitForFunction(count => Number(document.querySelector('canvas')?.dataset['frames'] ?? 0) > count, before);
async function opened(options: PaneOptions = {}, says = message): Promise<PanePage> {
    const pane = await PanePage.open('view', { width: 420, height: 640, ...options });
    await pane.say(says);
    await drawnSince(pane, 0);
    return pane;
}
/** The canvas as it is seen, with what changed marked or not. */
async function seen(pane: PanePage): Promise<string> {
    for (let last = -1, now = await frames(pane); now !== last; [last, now] = [now, await frames(pane)]) await pane.page.waitForTimeout(150);
    return createHash('sha256').update(await pane.page.locator('#stage').screenshot()).digest('hex');
}

describe('what changed, in three dimensions', () => {
    test.each(looks('view', [400, 900, 1600]))('has nothing against it in %s at %i pixels', async (theme, width) => {
        const pane = await opened({ theme, width, height: 900 });
        await pane.page.click('#changed-open');
        await pane.page.click('#left summary');
        await seen(pane);
        await pane.picture(`view-changed-${theme}-${width}`);
        expect(await pane.violations()).toEqual([]);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('by the key C and by the button: marked, told since when, listed and counted; and no longer', async () => {
        const pane = await opened(), { page } = pane, plain = await seen(pane);
        expect(await page.locator('#changed').count()).toBe(0);
        await page.focus('#canvas');
        await page.keyboard.press('c');
        expect(await seen(pane)).not.toBe(plain);
        expect(await page.textContent('#changed')).toContain(`Since the last commit: ${COMMIT.slice(0, 8)}`);
        for (const how of ['new', 'from', 'elsewhere'] as const) {
            const count = changed.come.filter(one => one.how === how).length;
            expect(await page.locator(`#come-${how} li`).count()).toBe(count);
            if (count > 0) expect(await page.textContent(`#come-${how} summary`)).toContain(String(count));
        }
        expect(await page.locator('#left li').count()).toBe(changed.left.length);
        expect(changed.left.length).toBeGreaterThan(0);
        expect(await pane.kept()).toMatchObject({ own: { changed: true } });
        await page.click('#changed-open');
        expect(await seen(pane)).toBe(plain);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('one walks through what changed alone; what stood there leads to the text as it was', async () => {
        const pane = await opened(), { page } = pane;
        await page.focus('#canvas');
        await page.keyboard.press('c');
        await page.keyboard.press('p');
        const last = changed.left.at(-1)!;
        await page.waitForFunction(words => document.querySelector('#picked')?.textContent?.replaceAll('⁄', '/').includes(words), last.words);
        expect(await page.textContent('#picked')).toContain('Stood here: ');
        await page.keyboard.press('Enter');
        expect((await pane.sent('select')).at(-1)).toMatchObject({ at: content.sources[last.at], was: COMMIT });
        await page.keyboard.press('n');
        const come = new Set(changed.come.map(({ key }) => key)), first = content.pieces.find(({ key }) => come.has(key))!;
        await page.waitForFunction(words => document.querySelector('#picked')?.textContent?.replaceAll('⁄', '/').includes(words), first.words);
        await page.keyboard.press('Enter');
        expect((await pane.sent('select')).at(-1)!.was).toBeUndefined();
        await pane.close();
    });

    test('opens where the pane of changes asks for it, and gives way to the order of putting up', async () => {
        const pane = await opened(), { page } = pane;
        await pane.say({ type: 'picked', key: 'library.what-changed' });
        expect(await page.locator('#changed').count()).toBe(1);
        const marked = await seen(pane);
        await page.click('#play-open');
        expect(await page.locator('#changed').count()).toBe(0);
        expect(await page.isDisabled('#changed-open')).toBe(true);
        await page.click('#play-open');
        expect(await seen(pane)).toBe(marked);
        await pane.close();
    });

    test('says why nothing is known, and says nothing where nobody reads a history', async () => {
        const told = async (changes: ViewContent['changes']): Promise<string | null> => {
            const { changes: _, ...rest } = content, pane = await opened({}, { ...message, content: { ...rest, ...changes && { changes } } as ViewContent });
            const button = pane.page.locator('#changed-open');
            if (await button.count() > 0) await button.click();
            const words = await pane.page.locator('#changed').count() > 0 ? await pane.page.textContent('#changed') : null;
            await pane.close();
            return words;
        };
        expect(await told({ none: 'no-commit' })).toContain('Nothing has been committed');
        expect(await told({ working: true })).toContain('is being read');
        expect(await told({ ...changed, isNew: true, come: [], left: [] })).toContain('The room was not there then.');
        expect(await told({ ...changed, come: [], left: [] })).toContain('Every piece stands where one like it stood.');
        expect(await told(undefined)).toBeNull();
    });
});
