import { describe, expect, test } from 'vitest';
import type { SectionContent } from '../../src/pages/section/content.ts';
import type { ContentMessage } from '../../src/panes/messages.ts';
import { HOSTILE } from '../pages/hostile.ts';
import { some } from '../support/full.ts';
import { parlor, type ParlorWords } from '../pages/parlor.ts';
import { contentMessage, roomOnPage, serve } from './support/content.ts';
import { inTheOneBrowser } from './support/one-browser.ts';
import { looks, PanePage } from './support/pane-page.ts';

inTheOneBrowser();

/** Widths that may be off, a saw that is off, joints that are pressed. */
const OFF: ParlorWords = { job: 'cut-tolerance 1/64"', blocking: 'rip 5 7/16" ± 1/64"', bottom: 'rip 5 13/32" ± 1/64"\n    gap 0" to 1/32"\n    press 1/32"' };
async function section(pane: PanePage, words: ParlorWords = OFF): Promise<ContentMessage> {
    const [size] = (await pane.sent('size')).slice(-1);
    return contentMessage('section', roomOnPage(await serve({ 'parlor.coffer': parlor(words) }), 'parlor.coffer'), size);
}

describe('the section pane', () => {
    test.each(looks('section'))('has nothing against it in %s at %i pixels', async (theme, width) => {
        const pane = await PanePage.open('section', { theme, width, height: width === 300 ? 700 : 900 });
        await pane.say(await section(pane));
        await pane.picture(`section-${theme}-${width}`);
        expect(await pane.violations()).toEqual([]);
        for (const why of await pane.page.locator('.case summary').all()) await why.click();
        expect(await pane.violations()).toEqual([]);
        expect(await pane.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
        await pane.page.evaluate(() => document.querySelector('.other')!.scrollIntoView());
        await pane.picture(`section-${theme}-${width}-tolerances`);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('says while somebody goes on typing that it is as it was before, without moving anything or taking the focus', async () => {
        const pane = await PanePage.open('section', { width: 400 });
        await pane.say(await section(pane));
        await pane.page.focus('#pin');
        const places = (): Promise<readonly number[]> => pane.page.evaluate(() => [...document.querySelectorAll('#page,#page svg,#page h2')].map(part => part.getBoundingClientRect().y));
        const before = await places();
        await pane.say({ type: 'holding', still: true });
        expect(await pane.page.locator('.still').innerText()).toBe('As it was before you began to type');
        expect(await places()).toEqual(before);
        expect(await pane.page.evaluate(() => document.activeElement?.id)).toBe('pin');
        expect(await pane.violations()).toEqual([]);
        await pane.picture('section-holds-still');
        await pane.say({ type: 'holding', still: false });
        expect(await pane.page.locator('.still').count()).toBe(0);
        await pane.close();
    });

    test('shows the section that is chosen, also after a reload', async () => {
        const pane = await PanePage.open('section');
        const message = await section(pane);
        await pane.say(message);
        expect(await pane.page.locator('h2:not(.standing *)').first().textContent()).toContain('deep-box');
        await pane.page.locator('.choice', { hasText: 'clear-box' }).click();
        expect(await pane.page.locator('h2:not(.standing *)').first().textContent()).toContain('clear-box');
        const kept = await pane.kept();
        await pane.close();
        const again = await PanePage.open('section', { kept });
        await again.say(message);
        expect(await again.page.locator('h2:not(.standing *)').first().textContent()).toContain('clear-box');
        await again.close();
    });

    test('a part leads to its words by mouse and by key, and is lit while the cursor is in them', async () => {
        const pane = await PanePage.open('section');
        const message = await section(pane);
        const { sources, sections: [first] } = message.content as SectionContent;
        await pane.say(message);
        const part = pane.page.locator('.drawing .part[aria-label="Side, left"]');
        const at = sources[Number(await part.getAttribute('data-at'))];
        await part.focus();
        await pane.page.keyboard.press('Enter');
        expect((await pane.sent('select')).at(-1)!.at).toEqual(at);
        await pane.forget();
        await pane.page.locator('.lengths .why button').first().click();
        expect((await pane.sent('select')).length).toBe(1);
        expect(first!.lengths[0]!.why[0]!.at).toBeDefined();
        const lit = (): Promise<string[]> => pane.page.locator('.drawing .part.lit').evaluateAll(parts => parts.map(each => each.getAttribute('aria-label')!));
        await pane.say({ type: 'selection', keys: ['parlor.cleat-1-1-east'], reveal: false });
        expect(await lit()).toEqual(['Cleat, left', 'Cleat, right']);
        await pane.say({ type: 'selection', keys: ['parlor.cleat-B-1-north'], reveal: false });
        expect(await lit()).toEqual([]);
        await pane.close();
    });

    test('a piece that is picked elsewhere brings its section', async () => {
        const pane = await PanePage.open('section');
        await pane.say(await section(pane));
        const picked = (): Promise<string[]> => pane.page.locator('.drawing .part.picked').evaluateAll(parts => parts.map(each => each.getAttribute('aria-label')!));
        await pane.say({ type: 'picked', key: 'parlor.bottom-B-2' });
        expect(await pane.page.locator('h2:not(.standing *)').first().textContent()).toContain('clear-box');
        expect(await picked()).toEqual(['Bottom']);
        await pane.say({ type: 'picked', key: 'parlor.side-1-1-east' });
        expect(await pane.page.locator('h2:not(.standing *)').first().textContent()).toContain('deep-box');
        expect(await picked()).toEqual(['Side, left', 'Side, right']);
        await pane.say({ type: 'picked', key: 'parlor.band-north' });
        expect(await pane.page.locator('h2:not(.standing *)').first().textContent()).toContain('Band');
        expect(await picked()).toEqual(['Band']);
        await pane.close();
    });

    test('hostile names are text', async () => {
        const pane = await PanePage.open('section', { width: 300 });
        for (const name of some(HOSTILE, 3)) {
            await pane.say(await section(pane, { ...OFF, title: name.replace(/["\\]/g, '') }));
            expect(await pane.page.evaluate(() => [document.title, document.querySelectorAll('main script, main img, main iframe').length])).toEqual(['section', 0]);
            expect(await pane.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(300);
        }
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });
});
