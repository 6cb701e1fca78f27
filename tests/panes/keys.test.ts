import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { PANE_KINDS, type PaneKind } from '../../src/pages/kinds.ts';
import type { PlanContent } from '../../src/pages/plan/content.ts';
import { FULL } from '../support/full.ts';
import { contentMessage, roomOnPage, serve } from './support/content.ts';
import { inTheOneBrowser } from './support/one-browser.ts';
import { PanePage } from './support/pane-page.ts';

const example = (path: string): string => readFileSync(new URL(`../../examples/${path}`, import.meta.url), 'utf8');
const files = {
    'yard.coffer': example('yard.coffer'), 'rates.coffer': example('rates.coffer'), 'details/groove-box.coffer': example('details/groove-box.coffer'), 'details/plain-box.coffer': example('details/plain-box.coffer'),
    // of every kind something: an error, a warning at a wall, what is written and not used
    'quince-lane/house.coffer': example('quince-lane/house.coffer'), 'quince-lane/study.coffer': example('quince-lane/study.coffer'), 'quince-lane/study-ceiling.csv': example('quince-lane/study-ceiling.csv'),
};
const study = async (): Promise<ReturnType<typeof roomOnPage>> => roomOnPage(await serve(files), 'quince-lane/study.coffer');

/** What a click does something on. */
const CLICKED = '[data-act],[data-find],[data-value],[data-at],[data-tick],[data-state],summary,select';

inTheOneBrowser();

describe('by the keyboard alone', () => {
    test.each(FULL ? PANE_KINDS : PANE_KINDS.filter(kind => kind === 'plan' || kind === 'section'))('%s: whatever a click does something on is reached, in the order it stands in, and seen to have the focus', async kind => {
        const pane = await open(kind);
        const { page } = pane;
        // menus hold what can be clicked too
        await page.evaluate(() => { for (const details of document.querySelectorAll('details')) details.open = true; });
        const all = await page.evaluate(clicked => {
            const seen = [...document.querySelectorAll<HTMLElement>(clicked)].filter(each => each.checkVisibility() && !each.closest('button:disabled,input:disabled'));
            for (const [i, each] of seen.entries()) each.dataset['number'] = String(i);
            return seen.length;
        }, CLICKED);
        const stops = await tabbed(page);
        const reached = new Set(stops.map(({ number }) => number));
        // parts of a drawing are one stop, and walked through from there
        for (const { number } of stops.filter(({ walks }) => walks)) for (const part of await walked(page, number!)) reached.add(part);
        // of what is drawn the parts, and what a click on a name in them does, are one thing
        const left = await page.evaluate(known => [...document.querySelectorAll<HTMLElement>('[data-number]')].filter(each => !known.includes(each.dataset['number']!)
            && !each.closest('[tabindex="-1"]:not(.part)') && !known.includes(each.parentElement?.closest<HTMLElement>('[data-number]')?.dataset['number'] ?? ''))
            .map(each => each.outerHTML.slice(0, 160)), [...reached].flatMap(number => number ?? []));
        expect(all).toBeGreaterThan(8);
        expect(left).toEqual([]);
        expect(stops.filter(({ isMarked }) => !isMarked).map(({ says }) => says)).toEqual([]);
        const places = stops.flatMap(({ number }) => number === null ? [] : [Number(number)]);
        expect(places).toEqual([...places].sort((a, b) => a - b));
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('the focus stays through an update, and goes to what is next where that which had it is gone', async () => {
        const pane = await PanePage.open('plan', { width: 900, height: 900 });
        const { page } = pane, room = await study();
        const message = await pane.fill(size => contentMessage('plan', room, size)), content = message.content as PlanContent;
        const found = { rule: 'taper-shows', severity: 'warning', at: 0, keys: [] } as const, say = (count: number): Promise<void> => pane.say({
            ...message, content: { ...content, findings: Array.from({ length: count }, (_, i) => ({ ...found, message: `finding ${i}` })) } as PlanContent,
        });
        await say(3);
        await page.focus('#finding-1 button');
        await say(2);
        expect(await has(page)).toContain('finding 1');
        await say(1);
        expect(await has(page)).toContain('finding 0');
        await say(0);
        expect(await has(page)).not.toBe('');
        await page.focus('#pin');
        await pane.say({ ...message, condition: 'broken' });
        expect(await page.evaluate(() => document.activeElement?.id)).toBe('pin');
        await pane.close();
    });

    test('who comes back from the text has the focus where it was, though the browser has forgotten it', async () => {
        const pane = await open('section');
        const { page } = pane;
        await page.focus('#pin');
        const back = (): Promise<void> => page.evaluate(() => {
            (document.activeElement as HTMLElement).blur();
            for (const what of ['blur', 'focus']) window.dispatchEvent(new Event(what));
        });
        await back();
        expect(await page.evaluate(() => document.activeElement?.id)).toBe('pin');
        // who points at something means that
        await page.evaluate(() => {
            (document.activeElement as HTMLElement).blur();
            window.dispatchEvent(new Event('blur'));
            document.dispatchEvent(new Event('pointerdown'));
            window.dispatchEvent(new Event('focus'));
        });
        expect(await page.evaluate(() => document.activeElement === document.body)).toBe(true);
        await pane.close();
    });

    test('a board\'s piece opens its card by Enter; Escape closes it, and the piece has the focus again', async () => {
        const pane = await open('boards');
        const { page } = pane;
        await page.focus('[data-lies] .part[tabindex="0"]');
        const piece = await has(page);
        await page.keyboard.press('Enter');
        await page.keyboard.press('Tab');
        expect(await page.evaluate(() => document.activeElement?.closest('.card') !== null)).toBe(true);
        await page.keyboard.press('Escape');
        expect(await page.locator('.card').count()).toBe(0);
        expect(await has(page)).toBe(piece);
        await pane.close();
    });
});

/** The words of what has the focus; none where nothing has. */
function has(page: PanePage['page']): Promise<string> {
    return page.evaluate(() => document.activeElement === document.body ? '' : document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '');
}

async function open(kind: PaneKind): Promise<PanePage> {
    const pane = await PanePage.open(kind, { width: 900, height: 900 });
    const room = await study();
    await pane.fill(size => contentMessage(kind, room, size));
    return pane;
}

interface Stop { readonly number: string | null; readonly walks: boolean; readonly isMarked: boolean; readonly says: string }

/** Where the Tab key goes, one after the other, until it leaves the page. A mark of the focus is an outline, or other lines round a part that is drawn. */
async function tabbed(page: PanePage['page']): Promise<readonly Stop[]> {
    await page.evaluate(() => {
        const stops: Stop[] = [], looks = (at: Element): string => JSON.stringify([...at.querySelectorAll(':scope>*')].map(each => {
            const { stroke, strokeWidth, fill } = getComputedStyle(each);
            return [stroke, strokeWidth, fill];
        }));
        let isOwn = false;
        document.addEventListener('focusin', event => {
            if (isOwn) return;
            const at = event.target as HTMLElement, { outlineStyle, outlineWidth } = getComputedStyle(at);
            let isMarked = outlineStyle !== 'none' && parseFloat(outlineWidth) >= 1;
            if (!isMarked) {
                const now = looks(at);
                isOwn = true;
                at.blur();
                isMarked = looks(at) !== now;
                at.focus({ preventScroll: true });
                isOwn = false;
            }
            stops.push({ number: at.dataset['number'] ?? null, walks: at.matches('.part') && at.closest('[data-zoom],[data-lies]') !== null, isMarked, says: at.outerHTML.slice(0, 160) });
        });
        (window as unknown as { stops: Stop[] }).stops = stops;
    });
    let stops: readonly Stop[] = [];
    for (let presses = 0; presses < 1000; presses++) {
        await page.keyboard.press('Tab');
        if (presses % 10 !== 9) continue;
        stops = await page.evaluate(() => (window as unknown as { stops: Stop[] }).stops);
        // after the last one the first comes again
        const again = stops.findIndex(({ says }, i) => i > 0 && says === stops[0]!.says);
        if (again > 0) return stops.slice(0, again);
    }
    throw new Error(`the Tab key comes to no end: ${stops.length} stops`);
}

/** The numbers of all parts that are walked through from one. */
async function walked(page: PanePage['page'], from: string): Promise<readonly string[]> {
    return page.evaluate(first => {
        const known = new Set<string>(), at = (number: string): HTMLElement => document.querySelector<HTMLElement>(`[data-number="${number}"]`)!;
        for (let number = first; !known.has(number); number = (document.activeElement as HTMLElement).dataset['number'] ?? first) {
            known.add(number);
            at(number).focus();
            at(number).dispatchEvent(new KeyboardEvent('keydown', { key: 'PageDown', bubbles: true, cancelable: true }));
        }
        return [...known];
    }, from);
}
