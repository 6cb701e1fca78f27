import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { RoomOnPage } from '../../src/pages/page.ts';
import { contentMessage, roomOnPage, serve } from './support/content.ts';
import type { ContentMessage } from '../../src/panes/messages.ts';
import { hallOf } from '../bench/hall.ts';
import { HOSTILE } from '../pages/hostile.ts';
import { FULL, some } from '../support/full.ts';
import { inTheOneBrowser } from './support/one-browser.ts';
import { looks, PanePage, type PaneOptions } from './support/pane-page.ts';

const example = (path: string): string => readFileSync(new URL(`../../examples/${path}`, import.meta.url), 'utf8');
const house = {
    'yard.coffer': example('yard.coffer'), 'details/groove-box.coffer': example('details/groove-box.coffer'),
    'quince-lane/house.coffer': example('quince-lane/house.coffer'), 'quince-lane/dining-room.coffer': example('quince-lane/dining-room.coffer'),
};
const DINING = 'quince-lane/dining-room.coffer';
const dining = async (files: Partial<typeof house> = {}): Promise<RoomOnPage> => roomOnPage(await serve({ ...house, ...files }), DINING);

inTheOneBrowser();

/** A pane with the dining room in it. */
async function shown(options: PaneOptions = {}, files: Partial<typeof house> = {}): Promise<{ pane: PanePage; message: ContentMessage }> {
    const pane = await PanePage.open('plan', options);
    const room = await dining(files);
    return { pane, message: await pane.fill(size => contentMessage('plan', room, size)) };
}
const viewBox = (pane: PanePage): Promise<number[]> => pane.page.locator('#sheet > svg').evaluate(svg => svg.getAttribute('viewBox')!.split(' ').map(Number));
const part = (pane: PanePage, key: string) => pane.page.locator(`[data-key="${key}"]`);

describe('the plan pane', () => {
    test.each(looks('plan'))('has nothing against it in %s at %i pixels', async (theme, width) => {
        const beam = house['details/groove-box.coffer'].replace('spacer: Length = 5"', 'spacer: Length = 5 1/2"');
        expect(beam).not.toBe(house['details/groove-box.coffer']);
        const pane = await PanePage.open('plan', { theme, width, height: width === 300 ? 700 : 900 });
        const room = await dining({ 'details/groove-box.coffer': beam });
        await pane.fill(size => contentMessage('plan', room, size));
        await pane.picture(`plan-${theme}-${width}`);
        expect(await pane.violations()).toEqual([]);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });
});

test.each([[1, 1, 13], [8, 5, 32], ...FULL ? [[12, 9, 60]] : []] as [number, number, number][])('a plan of %i by %i coffers can be read in a wide pane and in a narrow one', async (across, down, width) => {
    for (const pixels of [300, 1200]) {
        const pane = await PanePage.open('plan', { theme: 'light', width: pixels });
        const room = roomOnPage(await serve({ 'hall.coffer': hallOf(across, down, width) }), 'hall.coffer');
        await pane.fill(size => contentMessage('plan', room, size));
        await pane.picture(`plan-${across}-by-${down}-${pixels}`);
        expect(await pane.page.locator('[data-key^="coffer."]').count()).toBe(across * down);
        // the whole of it lies in the pane
        const sheet = (await pane.page.locator('#sheet').boundingBox())!;
        for (const box of await pane.page.locator('[id="plan.ground"], [id="plan.layer.dimensions"], [id="plan.layer.lines"], [id="plan.foot"]').evaluateAll(all => all.map(each => each.getBoundingClientRect().toJSON() as DOMRect))) {
            if (box.width + box.height === 0) continue;
            expect(box.left).toBeGreaterThanOrEqual(sheet.x - 2);
            expect(box.right).toBeLessThanOrEqual(sheet.x + sheet.width + 2);
            expect(box.top).toBeGreaterThanOrEqual(sheet.y - 2);
            expect(box.bottom).toBeLessThanOrEqual(sheet.y + sheet.height + 2);
        }
        await pane.close();
    }
});

describe('zoom', () => {
    test('wheel, drag, buttons and keys change what is seen; it stays through new content and is kept', async () => {
        const { pane, message } = await shown();
        const whole = await viewBox(pane);
        const middle = (await pane.page.locator('#sheet').boundingBox())!;
        const [x, y] = [middle.x + middle.width / 2, middle.y + middle.height / 2];
        await pane.page.mouse.move(x, y);
        await pane.page.mouse.wheel(0, -400);
        await expect.poll(async () => (await viewBox(pane))[2]!).toBeLessThan(whole[2]! * 0.7);
        const zoomed = await viewBox(pane);

        await pane.page.mouse.down();
        await pane.page.mouse.move(x - 60, y - 30, { steps: 4 });
        await pane.page.mouse.up();
        const moved = await viewBox(pane);
        expect(moved[0]).toBeGreaterThan(zoomed[0]!);
        expect(moved[1]).toBeGreaterThan(zoomed[1]!);
        expect(moved[2]).toBeCloseTo(zoomed[2]!, 1);
        // a drag is no click
        expect(await pane.saidNothing('select')).toBe(true);

        await pane.say(message);
        expect(await viewBox(pane)).toEqual(moved);
        const kept = await pane.kept();
        await pane.close();
        const { pane: again } = await shown({ kept });
        expect((await viewBox(again))[2]).toBeCloseTo(moved[2]!, 0);
        await again.page.locator('[data-act="fit"]').click();
        expect(await viewBox(again)).toEqual(whole);
        await part(again, 'coffer.6').focus();
        await again.page.keyboard.press('+');
        expect((await viewBox(again))[2]).toBeLessThan(whole[2]!);
        const near = await viewBox(again);
        await again.page.keyboard.press('Shift+ArrowRight');
        expect((await viewBox(again))[0]).toBeGreaterThan(near[0]!);
        await again.page.keyboard.press('0');
        expect(await viewBox(again)).toEqual(whole);
        expect(again.complaints).toEqual([]);
        await again.close();
    });

    test('two fingers', async () => {
        const { pane } = await shown();
        const whole = await viewBox(pane);
        await pane.page.locator('#sheet').evaluate(sheet => {
            const { left, top, width, height } = sheet.getBoundingClientRect(), y = top + height / 2;
            const send = (type: string, id: number, x: number): boolean =>
                sheet.firstElementChild!.dispatchEvent(new PointerEvent(type, { pointerId: id, pointerType: 'touch', bubbles: true, clientX: left + x * width, clientY: y, button: 0 }));
            // pointers that no hand moves cannot be held
            sheet.setPointerCapture = () => undefined;
            send('pointerdown', 1, 0.45);
            send('pointerdown', 2, 0.55);
            for (let step = 1; step <= 4; step++) { send('pointermove', 1, 0.45 - step * 0.05); send('pointermove', 2, 0.55 + step * 0.05); }
            send('pointerup', 1, 0.25);
            send('pointerup', 2, 0.75);
        });
        expect((await viewBox(pane))[2]).toBeLessThan(whole[2]! / 2);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });
});

describe('parts', () => {
    test('a click leads to the words, by place', async () => {
        const { pane, message } = await shown();
        await part(pane, 'coffer.5').click();
        await pane.page.locator('[data-key="dining.side-1-1-west"]').dispatchEvent('click');
        const [coffer, side] = await pane.sent('select');
        expect(message.content!.sources).toContainEqual(coffer!.at);
        expect(coffer!.at.uri).toContain('dining-room.coffer');
        expect(side!.at.uri).toContain('groove-box.coffer');
        await pane.close();
    });

    test('a coffer and a string of figures lead to the words that set them', async () => {
        const { pane } = await shown();
        for (const key of ['coffer.5', 'dimensions.across.parts', 'dimensions.down.parts', 'dimensions.across.room']) await part(pane, key).dispatchEvent('click');
        const words = (await pane.sent('select')).map(({ at: { range: { start } } }) => house[DINING].split('\n')[start.line]!.trim().replaceAll(/\s+/g, ' '));
        expect(words).toEqual(['coffers-north 4', 'coffers-north 4', 'coffers-east 3', `wall north 15' 10"`]);
        await pane.close();
    });

    test('the keyboard walks from part to part, from one stop of the Tab key, and Enter leads to the words', async () => {
        const { pane } = await shown();
        await pane.page.locator('#layers > summary').focus();
        await pane.page.keyboard.press('Tab');
        const focused = (): Promise<string> => pane.page.evaluate(() => document.activeElement!.getAttribute('data-key') ?? document.activeElement!.tagName);
        expect(await focused()).toBe('coffer.1');
        await pane.page.keyboard.press('ArrowRight');
        const next = await focused();
        expect(next).toMatch(/^dining\./);
        const name = await pane.page.evaluate(() => document.activeElement!.getAttribute('aria-label'));
        expect(await pane.page.locator('#readout').innerText()).toBe(name);
        await pane.page.keyboard.press('ArrowLeft');
        expect(await focused()).toBe('coffer.1');
        await pane.page.keyboard.press('ArrowDown');
        await pane.page.keyboard.press('Enter');
        expect((await pane.sent('select'))).toHaveLength(1);
        await pane.page.keyboard.press('Tab');
        expect(await pane.page.evaluate(() => document.activeElement!.closest('#sheet') === null)).toBe(true);
        await pane.page.keyboard.press('Shift+Tab');
        expect(await focused()).not.toBe('coffer.1');
        expect(await pane.page.locator('#sheet [tabindex="0"]').count()).toBe(1);
        await pane.close();
    });

    test('what the cursor stands in is lit, also after new content', async () => {
        const { pane, message } = await shown();
        const keys = ['dining.side-B-3-north', 'line.B'];
        await pane.say({ type: 'selection', keys, reveal: false });
        const lit = (): Promise<string[]> => pane.page.evaluate(() => [...document.querySelectorAll('.lit')].map(each => each.getAttribute('data-key')!).sort());
        expect(await lit()).toEqual([...keys].sort());
        await pane.picture('plan-lit');
        await pane.say(message);
        expect(await lit()).toEqual([...keys].sort());
        await pane.say({ type: 'selection', keys: [], reveal: false });
        expect(await lit()).toEqual([]);
        await pane.close();
    });

    test('layers go and come, and stay as they are set', async () => {
        const { pane, message } = await shown();
        await pane.page.locator('#layers > summary').click();
        await pane.page.locator('#layer-sides').uncheck();
        await pane.picture('plan-layers');
        expect(await pane.violations()).toEqual([]);
        expect(await part(pane, 'dining.side-1-1-west').isVisible()).toBe(false);
        expect(await pane.page.locator('#layers').getAttribute('open')).not.toBeNull();
        await pane.say(message);
        expect(await pane.page.locator('#layers').getAttribute('open')).not.toBeNull();
        expect(await part(pane, 'dining.side-1-1-west').isVisible()).toBe(false);
        expect(await pane.kept()).toMatchObject({ version: 1, kind: 'plan', room: { room: 'dining' }, own: { layers: { sides: false } } });
        await pane.page.keyboard.press('Escape');
        expect(await pane.page.locator('#layers').getAttribute('open')).toBeNull();
        await pane.close();
    });

    test('a finding lights up the parts it is about', async () => {
        const beam = house['details/groove-box.coffer'].replace('spacer: Length = 5"', 'spacer: Length = 5 1/2"');
        const { pane } = await shown({}, { 'details/groove-box.coffer': beam });
        await pane.page.locator('#finding-0 button').focus();
        expect(await pane.page.locator('.about').count()).toBeGreaterThan(5);
        await pane.picture('plan-finding');
        await pane.page.locator('#finding-0 button').click();
        expect((await pane.sent('select'))[0]!.at.uri).toContain('groove-box.coffer');
        await part(pane, 'finding.0').hover();
        expect(await pane.page.locator('.about').count()).toBeGreaterThan(5);
        expect(await pane.page.locator('#readout').innerText()).toMatch(/^Error: /);
        await pane.close();
    });
});

describe('the frame of a pane', () => {
    const at = { uri: 'file:///house/x.coffer', range: { start: { line: 3, character: 1 }, end: { line: 3, character: 4 } } };

    test('dims the last good picture while the text is broken, and leads to the first error', async () => {
        const { pane, message } = await shown();
        const { content: _, ...rest } = message;
        await pane.say({ ...rest, condition: 'broken', problem: { message: 'A brace is missing.', at } });
        expect(await pane.page.locator('#page').getAttribute('class')).toContain('broken');
        expect(await pane.page.locator('[data-key="coffer.1"]').count()).toBe(1);
        await pane.picture('plan-broken');
        expect(await pane.violations()).toEqual([]);
        expect(await pane.page.locator('[role="status"]').innerText()).toContain('A brace is missing.');
        await pane.page.locator('[data-act="problem"]').click();
        expect((await pane.sent('select'))[0]!.at).toEqual(at);
        await pane.say(message);
        expect(await pane.page.locator('#page').getAttribute('class')).not.toContain('broken');
        expect(await pane.page.locator('#trouble').innerText()).toBe('');
        await pane.close();
    });

    test('without a room says so, and has nothing against it', async () => {
        const pane = await PanePage.open('plan');
        await pane.say({ type: 'content', kind: 'plan', shown: null, rooms: [], condition: 'nothing' });
        await pane.picture('plan-nothing');
        expect(await pane.page.locator('#trouble').innerText()).toContain('There is no room here');
        expect(await pane.violations()).toEqual([]);
        await pane.close();
    });

    test('names the rooms to choose from, pins, and asks for files', async () => {
        const { pane, message } = await shown();
        const other = { uri: 'file:///house/study.coffer', room: 'study', title: HOSTILE[0]! };
        await pane.say({ ...message, rooms: [message.shown!, other] });
        await pane.page.locator('#rooms').selectOption({ label: HOSTILE[0]! });
        expect((await pane.sent('choose'))[0]).toMatchObject({ uri: other.uri, room: 'study' });
        await pane.page.locator('#pin').click();
        expect((await pane.sent('pin'))[0]).toMatchObject({ pinned: true });
        expect(await pane.page.locator('#pin').getAttribute('aria-pressed')).toBe('true');
        await pane.page.locator('#files > summary').click();
        await pane.picture('plan-files');
        expect(await pane.violations()).toEqual([]);
        await pane.page.locator('[data-format="csv"]').click();
        expect((await pane.sent('export'))[0]).toMatchObject({ format: 'csv', state: { layers: {} } });
        await pane.close();
    });

    test('leads to the other panes, by the mouse, by Alt and a number and by the arrow keys', async () => {
        const { pane } = await shown();
        await pane.page.click('#switch-boards');
        await pane.page.keyboard.press('Alt+3');
        // the editor has meanings of its own for such keys
        expect(await pane.page.evaluate(() => {
            let heard = 0;
            window.addEventListener('keydown', () => heard++);
            document.body.dispatchEvent(new KeyboardEvent('keydown', { code: 'Digit2', altKey: true, bubbles: true }));
            return heard;
        })).toBe(0);
        await pane.page.focus('#switch-plan');
        await pane.page.keyboard.press('ArrowLeft');
        expect(await pane.page.evaluate(() => document.activeElement!.id)).toBe('switch-put-up');
        await pane.page.keyboard.press('Enter');
        expect((await pane.sent('switch')).map(({ kind }) => kind)).toEqual(['boards', 'cut-list', 'section', 'put-up']);
        // its own is no way anywhere
        await pane.page.click('#switch-plan');
        expect(await pane.sent('switch')).toHaveLength(4);
        expect(await pane.page.getAttribute('#switch-plan', 'aria-current')).toBe('page');
        await pane.close();
    });

    test('says that it works, from the beginning and whenever another room is asked for', async () => {
        const pane = await PanePage.open('plan');
        expect(await pane.page.innerText('#working')).toBe('Working …');
        expect(await pane.violations()).toEqual([]);
        const room = await dining(), message = await pane.fill(size => contentMessage('plan', room, size));
        expect(await pane.page.innerText('#working')).toBe('');
        await pane.say({ ...message, rooms: [message.shown!, { uri: 'file:///house/study.coffer', room: 'study', title: 'Study' }] });
        await pane.page.selectOption('#rooms', { label: 'Study' });
        expect(await pane.page.innerText('#working')).toBe('Working …');
        expect(await pane.page.getAttribute('#main', 'aria-busy')).toBe('true');
        await pane.close();
    });

    test('of a whole house says the house, not a room', async () => {
        const pane = await PanePage.open('estimate');
        const message = contentMessage('estimate', await dining());
        await pane.say(message);
        expect(await pane.page.innerText('#room')).toBe('Quince Lane 12');
        await pane.say({ ...message, rooms: [message.shown!, { uri: 'file:///mill/hall.coffer', room: 'hall', title: 'Mill Street 3' }] });
        expect(await pane.page.locator('#rooms option').allInnerTexts()).toEqual(['Quince Lane 12', 'Mill Street 3']);
        expect(await pane.page.getAttribute('#pin', 'title')).toBe('Stay with this house');
        await pane.close();
    });

    test('answers a message of another version in words, and goes on', async () => {
        const { pane, message } = await shown();
        await pane.sayRaw({ version: 99, type: 'hologram' });
        expect(await pane.page.locator('#words').innerText()).toContain('different versions');
        await pane.sayRaw('nonsense');
        await pane.say(message);
        expect(await pane.page.locator('#words').count()).toBe(0);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('speaks the language of its translations', async () => {
        const pane = await PanePage.open('plan', { language: 'de', words: { 'Save a copy': 'Kopie sichern </script><script>x' } });
        expect(await pane.page.locator('#files > summary').innerText()).toBe('Kopie sichern </script><script>x');
        expect(await pane.page.locator('html').getAttribute('lang')).toBe('de');
        await pane.close();
    });

    test.each(some(HOSTILE, 3))('shows a name as text: %s', async name => {
        const room = house[DINING].replace('"Dining room"', JSON.stringify(name.replace(/["\\]/g, ''))).replaceAll('pendant-west', 'pendant-west');
        const { pane, message } = await shown({ width: 300 }, { [DINING]: room });
        await pane.say({ ...message, condition: 'broken', rooms: [message.shown!, { ...message.shown!, room: 'two', title: name }], problem: { message: name, at } });
        expect(await pane.page.title()).toBe('plan');
        expect(await pane.page.evaluate(() => document.querySelectorAll('#root img, #root script, #root iframe').length)).toBe(0);
        expect(await pane.page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });
});
