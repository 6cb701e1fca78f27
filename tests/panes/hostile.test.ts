import { describe, expect, test } from 'vitest';
import { PANE_KINDS, type PaneKind } from '../../src/pages/kinds.ts';
import type { ContentMessage } from '../../src/panes/messages.ts';
import { contentMessage, roomOnPage, serve } from './support/content.ts';
import { inTheOneBrowser } from './support/one-browser.ts';
import { PanePage } from './support/pane-page.ts';
import { FULL } from '../support/full.ts';
import { EVIL, EVIL_FILE, evilHouse } from '../hostile/house.ts';

inTheOneBrowser();

/** What somebody may write where text may stand. */
const TEXTS: Readonly<Record<string, string>> = {
    'what programs obey, half signs': `${EVIL} \ud800 \udc00x <svg onload=alert(1)> "onmouseover="alert(1)`,
    'four thousand signs without a space': 'W'.repeat(4000),
    'four thousand signs that turn the reading round': '\u202eא'.repeat(2000),
};
/** Steers the reading, obeyed by a terminal, or half of a sign. */
const UNFIT = /[\p{Cs}\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/u;
const kinds = FULL ? PANE_KINDS : PANE_KINDS.filter((_, i) => i % 3 === 0);

/** What a pane of this kind is sent of a house that is full of it. */
async function hostile(kind: PaneKind, text: string): Promise<(size: { readonly width: number; readonly height: number }) => ContentMessage> {
    const house = evilHouse(text), folder = Object.keys(house).find(name => name.endsWith('/box.coffer'))!.replace('/box.coffer', '');
    delete house[EVIL_FILE];
    // the names of files are met elsewhere
    const files = Object.fromEntries(Object.entries(house).map(([name, words]) => [name.replace(folder, 'details'), words.replaceAll(folder, 'details')]));
    const room = roomOnPage(await serve(files), 'den.coffer');
    return size => contentMessage(kind, room, size);
}

describe('panes of a job whose texts are hostile', () => {
    test.each(kinds.flatMap(kind => Object.keys(TEXTS).map(name => [kind, name] as const)))('%s, %s: it is text, and stays within the pane', async (kind, name) => {
        const pane = await PanePage.open(kind, { width: 400, height: 800, before: () => { window.alert = () => { document.title = 'taken'; }; } });
        const { page } = pane, message = await hostile(kind, TEXTS[name]!);
        for (const width of [400, 900]) {
            await page.setViewportSize({ width, height: 800 });
            await pane.fill(message);
            const seen = await page.evaluate(() => ({
                title: document.title, words: document.body.innerText,
                foreign: [...document.querySelectorAll('script:not([nonce]):not([type="application/json"]),img,iframe,object,embed,form,base,link:not([rel="stylesheet"])')].map(each => each.outerHTML.slice(0, 120)),
                handlers: [...document.querySelectorAll('*')].filter(each => [...each.attributes].some(({ name: attribute }) => attribute.startsWith('on'))).length,
                wider: document.documentElement.scrollWidth - document.documentElement.clientWidth,
            }));
            expect(seen.title).not.toBe('taken');
            expect(seen.foreign).toEqual([]);
            expect(seen.handlers).toBe(0);
            expect(seen.wider, `${width} wide`).toBeLessThanOrEqual(0);
            expect(UNFIT.exec(seen.words)?.[0]).toBeUndefined();
        }
        await pane.picture(`hostile-${kind}-${Object.keys(TEXTS).indexOf(name)}`);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });
});

describe('panes that are sent what nobody should send', () => {
    test.each(kinds)('%s: it says so, lives on, and shows the next good content', async kind => {
        const pane = await PanePage.open(kind), { page } = pane, good = (await hostile(kind, 'Den'))({ width: 700, height: 800 });
        const { content } = good, shown = { version: 1, ...good };
        const garbage: readonly unknown[] = [
            null, 5, 'content', [], {}, { type: 'content' }, { ...shown, version: 0 }, { ...shown, version: 2 }, { ...shown, type: 'constructor' }, { ...shown, rooms: null }, { ...shown, condition: 'toString' },
            { ...shown, content: {} }, { ...shown, content: { sources: [] } }, { ...shown, content: 'x' }, { ...shown, content: [] }, { ...shown, content: Object.fromEntries(Object.keys(content!).map(key => [key, null])) },
            { ...shown, content: Object.fromEntries(Object.keys(content!).map(key => [key, '<img src=x>'])) }, { version: 1, type: 'selection', keys: [{}], reveal: true },
            { version: 1, type: 'selection', keys: ['x'.repeat(1e6)], reveal: true }, { version: 1, type: 'picked', key: '"] *' }, { version: 1, type: 'ticks', keys: ['__proto__'] },
        ];
        for (const each of garbage) await pane.sayRaw(each);
        expect(pane.complaints).toEqual([]);
        expect(await page.evaluate(() => document.querySelectorAll('img').length)).toBe(0);
        await pane.sayRaw(garbage[12]);
        // where the kind needs parts that are missing; the live region keeps what was read out last
        const words = (): Promise<string> => page.evaluate(() => document.getElementById('root')!.innerText);
        if (kind !== 'changes') expect(await words()).toContain('different versions');
        await pane.say(good);
        expect(await words()).not.toContain('different versions');
        expect(await page.evaluate(() => document.getElementById('page')!.innerText.length)).toBeGreaterThan(20);
        // from room to room in a breath: the last one stands
        for (let i = 0; i < 40; i++) await page.evaluate(given => window.postMessage(given, '*'), { ...shown, shown: { ...good.shown, title: `Room ${i}` } } as unknown);
        await page.evaluate(() => new Promise(resolve => { setTimeout(resolve, 50); }));
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });
});
