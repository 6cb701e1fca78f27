import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { PutUpContent, StepOnPage } from '../../src/pages/put-up/content.ts';
import { putUpPage } from '../../src/pages/put-up/page.ts';
import { stepsOn } from '../../src/pages/put-up/render.ts';
import type { RoomOnPage } from '../../src/pages/page.ts';
import type { ContentMessage } from '../../src/panes/messages.ts';
import { putUpOf } from '../../src/putup/put-up.ts';
import { contentMessage, roomOnPage, serve } from './support/content.ts';
import { inTheOneBrowser } from './support/one-browser.ts';
import { looks, PanePage, type PaneOptions } from './support/pane-page.ts';
import { atOnce } from '../../src/plain/steps.ts';

const example = (path: string): string => readFileSync(new URL(`../../examples/${path}`, import.meta.url), 'utf8');
const files = Object.fromEntries(['yard.coffer', 'rates.coffer', 'details/groove-box.coffer', 'quince-lane/house.coffer', 'quince-lane/dining-room.coffer'].map(path => [path, example(path)]));
let room: RoomOnPage, message: ContentMessage, content: PutUpContent, steps: readonly StepOnPage[];
beforeAll(async () => {
    room = roomOnPage(await serve(files), 'quince-lane/dining-room.coffer');
    message = contentMessage('put-up', room);
    content = message.content as PutUpContent;
    steps = stepsOn(content);
});
inTheOneBrowser();

async function opened(options: PaneOptions = {}, says: ContentMessage = message): Promise<PanePage> {
    const pane = await PanePage.open('put-up', { width: 1000, height: 800, ...options });
    await pane.say(says);
    return pane;
}
const now = (pane: PanePage): Promise<string> => pane.page.$eval('#now-words', words => words.textContent ?? '');
const counts = (pane: PanePage): Promise<Record<string, number>> => pane.page.evaluate(() => Object.fromEntries(['up', 'now', 'later'].map(state => [state, document.querySelectorAll(`#plan .${state} .part`).length])));

describe('the pane of putting up', () => {
    test.each(looks('put-up', [300, 400, 900, 1600]))('has nothing against it in %s at %i pixels', async (theme, width) => {
        const pane = await PanePage.open('put-up', { theme, width, height: 900 });
        await pane.fill(size => contentMessage('put-up', room, size));
        expect(await pane.violations()).toEqual([]);
        await pane.page.click('#act-last');
        await pane.page.click('#pressed summary');
        await pane.picture(`put-up-${theme}-${width}`);
        expect(await pane.violations()).toEqual([]);
        expect(await pane.page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('every piece of every step in the order of the core, grouped into days; each leads to its words', async () => {
        const { steps: order } = putUpOf(room.ceiling);
        expect(steps.map(({ pieces }) => pieces.map(({ key }) => key))).toEqual(order.map(({ placings }) => placings.map(({ piece }) => piece.id)));
        const days = content.days.map(({ day }) => day);
        expect(days).toEqual([...days].sort((a, b) => a! - b!));
        expect(days.length).toBeGreaterThan(1);
        const pane = await opened(), last = steps.at(-1)!, piece = last.pieces[0]!;
        await pane.page.click(`#step-${last.number}-head`);
        await pane.page.click(`[id="piece-${piece.key}"]`);
        expect((await pane.sent('pick')).at(-1)).toMatchObject({ key: piece.key });
        expect((await pane.sent('select')).at(-1)!.at).toEqual(content.sources[piece.at]);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('the plan stands as the step does: what is up, what goes up now, what is still to come, in words too', async () => {
        const pane = await opened(), all = steps.flatMap(({ pieces }) => pieces).length;
        expect(await counts(pane)).toEqual({ up: 0, now: steps[0]!.pieces.length, later: all - steps[0]!.pieces.length });
        await pane.page.click('#act-on');
        const [first, second] = steps;
        expect(await counts(pane)).toEqual({ up: first!.pieces.length, now: second!.pieces.length, later: all - first!.pieces.length - second!.pieces.length });
        expect(await now(pane)).toContain(`Step 2 of ${steps.length}: ${second!.what}`);
        await pane.page.waitForFunction(() => document.querySelector('[aria-live]')?.textContent?.startsWith('Step 2 of '));
        const looks = await pane.page.evaluate(() => ['up', 'now', 'later'].map(state => {
            const { fill, strokeWidth, strokeDasharray } = getComputedStyle(document.querySelector(`#plan .${state} path`)!);
            return [fill, strokeWidth, strokeDasharray].join();
        }));
        expect(new Set(looks.map(look => look.split(',').slice(-2).join())).size).toBe(3);
        await pane.close();
    });

    test('by keys alone: along the steps, and along the slider', async () => {
        const pane = await opened(), { page } = pane, focus = (): Promise<string> => page.evaluate(() => document.activeElement!.id);
        await page.focus('#step-1-head');
        await page.keyboard.press('ArrowDown');
        expect([await focus(), await page.getAttribute('#step-2-head', 'aria-expanded')]).toEqual(['step-2-head', 'true']);
        await page.keyboard.press('End');
        expect(await focus()).toBe(`step-${steps.length}-head`);
        await page.keyboard.press('Home');
        expect(await focus()).toBe('step-1-head');
        await page.focus('#scrub');
        await page.keyboard.press('ArrowRight');
        await page.keyboard.press('ArrowRight');
        expect(await now(pane)).toContain('Step 3 of');
        expect(await page.getAttribute('#scrub', 'aria-valuetext')).toContain('Step 3 of');
        await page.keyboard.press('End');
        expect(await counts(pane)).toMatchObject({ later: 0, now: steps.at(-1)!.pieces.length });
        await page.click('#watch');
        expect((await pane.sent('find')).at(-1)).toMatchObject({ kind: 'view', key: `step.${steps.length}` });
        expect(await pane.kept()).toMatchObject({ own: { step: String(steps.length) } });
        await pane.close();
    });

    test('the first bay is a gate with what is measured; closing pieces have their ways in; a piece picked elsewhere opens its step', async () => {
        const gates = steps.filter(({ gate }) => gate), closing = steps.find(step => step.closing.length > 0)!;
        expect(gates).toHaveLength(1);
        expect(gates[0]!.gate!.rows.length).toBeGreaterThan(5);
        const pane = await opened(), { page } = pane;
        expect(await page.textContent(`#step-${gates[0]!.number} .gate`)).toContain('measure coffer');
        const key = closing.pieces[1]!.key;
        await pane.say({ type: 'picked', key });
        expect(await now(pane)).toContain(`Step ${closing.number} of`);
        expect(await page.textContent('.closing')).toContain('Ways in');
        expect(await page.$$eval('#plan .picked', all => all.map(each => each.getAttribute('data-key')))).toEqual([key]);
        await pane.close();
    });

    test('while it is worked out that is said', async () => {
        const { layout, file, ceiling, takeOff, findings, standing, house, alternates } = room;
        const pane = await opened({}, contentMessage('put-up', { layout, file, ceiling, takeOff, findings, standing, house, alternates, order: 'looking' }));
        expect(await pane.page.textContent('#looking')).toContain('Working out');
        expect(await pane.violations()).toEqual([]);
        await pane.close();
    });

    test('it is kept as files', async () => {
        const html = await atOnce(putUpPage.exports.html!(room, undefined)), csv = await atOnce(putUpPage.exports.csv!(room, undefined));
        expect([html.name, csv.name]).toEqual(['put-up-dining.html', 'put-up-dining.csv']);
        expect(String(html.bytes)).not.toContain('<button');
    });

    test('on paper: a picture of each step that shows what is up by then, and no more', async () => {
        const { bytes } = await atOnce(putUpPage.exports.html!(room, undefined)), page = String(bytes);
        expect([...page.matchAll(/<figcaption><b>(\d+)\. /g)].map(([, number]) => Number(number))).toEqual(steps.map(({ number }) => number));
        const named = new Map([...page.matchAll(/<g id="(steps?-[\w-]+)"[^>]*>(.*?)<\/g>/gs)].map(([, id, inside]) => [id!, inside!]));
        // every piece is drawn once, and every picture names it once: as up, as going up, or not at all
        const piecesIn = (markup: string): number => [...markup.matchAll(/<path |<use href="#([\w-]+)"/g)]
            .reduce((sum, [, id]) => sum + (id === undefined ? 1 : id === 'step-ground' ? 0 : piecesIn(named.get(id)!)), 0);
        const pictures = [...page.matchAll(/<svg viewBox="[^"]*" role="img" aria-label="(\d+)\. [^"]*">(.*?)<\/svg>/gs)];
        expect(pictures).toHaveLength(steps.length);
        let up = 0;
        for (const [i, [, number, picture]] of pictures.entries()) {
            const [, , before, now] = /class="later"\/>(<g class="up">(.*?)<\/g>)(<use href="#[\w-]+" class="now"\/>)/.exec(picture!)!;
            expect([Number(number), piecesIn(before!), piecesIn(now!)]).toEqual([steps[i]!.number, up, steps[i]!.pieces.length]);
            up += steps[i]!.pieces.length;
        }
        expect(page.length).toBeLessThan(900_000);
    });

    test('printed, a heading stays with what it heads, and every picture and row in one piece', async () => {
        const { bytes } = await atOnce(putUpPage.exports.html!(room, undefined)), pane = await opened();
        // the pane's policy takes no style sheets but its own
        await pane.page.goto('about:blank');
        await pane.page.setContent(String(bytes));
        await pane.page.emulateMedia({ media: 'print' });
        // where pages break nobody tells a script; what the browser is told is there
        const parted = await pane.page.evaluate(() => [...document.querySelectorAll('h1,h2,h3,.legend')].filter(head => getComputedStyle(head).breakAfter !== 'avoid').map(head => head.textContent));
        const broken = await pane.page.evaluate(() => [...document.querySelectorAll('figure,tr')].filter(part => getComputedStyle(part).breakInside !== 'avoid').length);
        expect([parted, broken]).toEqual([[], 0]);
        await pane.page.emulateMedia({ media: null });
        await pane.close();
    });
});
