import { readFileSync } from 'node:fs';
import { PerspectiveCamera, Vector3 } from 'three';
import { beforeAll, describe, expect, test } from 'vitest';
import type { ContentMessage } from '../../src/panes/messages.ts';
import type { ViewContent, ViewPiece } from '../../src/pages/view/content.ts';
import { directionOf, standingFor } from '../../src/panes/view/looks.ts';
import { contentMessage, roomOnPage, serve } from './support/content.ts';
import { runs } from '../support/full.ts';
import { inTheOneBrowser } from './support/one-browser.ts';
import { looks, PanePage, type PaneOptions } from './support/pane-page.ts';

const example = (path: string): string => readFileSync(new URL(`../../examples/${path}`, import.meta.url), 'utf8');
const house = {
    'yard.coffer': example('yard.coffer'), 'details/groove-box.coffer': example('details/groove-box.coffer'),
    'quince-lane/house.coffer': example('quince-lane/house.coffer'), 'quince-lane/dining-room.coffer': example('quince-lane/dining-room.coffer'),
};
let message: ContentMessage, content: ViewContent, spoiled: ContentMessage;
beforeAll(async () => {
    message = contentMessage('view', roomOnPage(await serve(house), 'quince-lane/dining-room.coffer'));
    content = message.content as ViewContent;
    const beam = house['details/groove-box.coffer'].replace('spacer: Length = 5"', 'spacer: Length = 5 1/2"');
    expect(beam).not.toBe(house['details/groove-box.coffer']);
    spoiled = contentMessage('view', roomOnPage(await serve({ ...house, 'details/groove-box.coffer': beam }), 'quince-lane/dining-room.coffer'));
});
inTheOneBrowser();

const frames = (pane: PanePage): Promise<number> => pane.page.evaluate(() => Number(document.querySelector('canvas')?.dataset['frames'] ?? 0));
/** Until the picture has been drawn, and nothing more is being drawn. */
async function drawn(pane: PanePage, since = 0): Promise<number> {
    await pane.page.waitForFunction(before => Number(document.querySelector('canvas')?.dataset['frames'] ?? 0) > before, since);
    for (let now = await frames(pane); ; ) {
        await pane.page.waitForTimeout(120);
        const later = await frames(pane);
        if (later === now) return now;
        now = later;
    }
}
/** Small, since without a graphics card every point of the picture is worked out by the processor. */
async function opened(options: PaneOptions = {}, says: ContentMessage = message): Promise<PanePage> {
    const pane = await PanePage.open('view', { width: 420, height: 480, ...options });
    await pane.say(says);
    await drawn(pane);
    return pane;
}
/** Colors on the canvas: how many spots of a grid have each. */
async function spots(pane: PanePage): Promise<ReadonlyMap<string, number>> {
    const png = await pane.page.locator('#stage').screenshot();
    const rows = await pane.page.evaluate(async base64 => {
        const picture = await createImageBitmap(new Blob([Uint8Array.from(atob(base64), letter => letter.charCodeAt(0))], { type: 'image/png' }));
        const { width, height } = picture, surface = new OffscreenCanvas(width, height).getContext('2d')!;
        surface.drawImage(picture, 0, 0);
        const { data } = surface.getImageData(0, 0, width, height);
        return Array.from({ length: 3600 }, (_, i) => {
            const at = 4 * (Math.floor((i % 60 + 0.5) * width / 60) + width * Math.floor((Math.floor(i / 60) + 0.5) * height / 60));
            return `${data[at]! >> 4} ${data[at + 1]! >> 4} ${data[at + 2]! >> 4}`;
        });
    }, png.toString('base64'));
    const counts = new Map<string, number>();
    for (const row of rows) counts.set(row, (counts.get(row) ?? 0) + 1);
    return counts;
}

/** Where the middle of a piece's underside is seen, looking straight up: shares of the picture from its left and its top. */
function seenFromBelow({ corners }: ViewPiece, aspect: number): readonly [number, number] {
    const inches = (axis: number) => corners.filter((_, i) => i % 3 === axis).map(ticks => ticks / 16256);
    const middle = (axis: number) => (Math.min(...inches(axis)) + Math.max(...inches(axis))) / 2;
    const { width, length, depth } = content.size;
    const bounds = { min: new Vector3(0, -depth / 16256 - 5, 0), max: new Vector3(width / 16256, 0, length / 16256) };
    const { at, target } = standingFor(bounds, directionOf('below'), { aspect });
    const camera = new PerspectiveCamera(32, aspect, 1, 1e5);
    camera.position.copy(at);
    camera.lookAt(target);
    camera.updateMatrixWorld();
    const { x, y } = new Vector3(middle(0), -Math.max(...inches(2)), middle(1)).project(camera);
    return [(x + 1) / 2, (1 - y) / 2];
}

describe('the pane in three dimensions', () => {
    test.each(looks('view'))('has nothing against it in %s at %i pixels', async (theme, width) => {
        const pane = await opened({ theme, width, height: width === 300 ? 700 : 900 }, spoiled);
        await pane.picture(`view-${theme}-${width}`);
        expect(await pane.violations()).toEqual([]);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('draws when something has changed, and at no other time', async () => {
        const pane = await opened();
        const before = await frames(pane);
        await pane.page.waitForTimeout(400);
        expect(await frames(pane)).toBe(before);
        await pane.page.click('#look-above');
        expect(await drawn(pane, before)).toBeGreaterThan(before);
        await pane.close();
    });

    test('a click on a piece shows its words in the text, says its name and lights it up', async () => {
        const pane = await opened();
        const before = await frames(pane);
        await pane.page.click('#look-below');
        await drawn(pane, before);
        await pane.forget();
        const box = (await pane.page.locator('#canvas').boundingBox())!;
        for (const piece of content.pieces.filter(({ part }) => part === 'bottom').slice(0, 3)) {
            const [x, y] = seenFromBelow(piece, box.width / box.height);
            await pane.page.mouse.click(box.x + box.width * x, box.y + box.height * y);
            await pane.page.waitForFunction(words => document.querySelector('#picked .link')?.textContent === words, piece.words);
            const [select] = (await pane.sent('select')).slice(-1);
            expect(select!.at).toEqual(content.sources[piece.at]);
            await pane.page.waitForFunction(words => [...document.querySelectorAll('[aria-live]')].some(each => each.textContent?.includes(words)), piece.words);
        }
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    test('a drag turns it, and picks nothing', async () => {
        const pane = await opened();
        await pane.forget();
        const before = await frames(pane), box = (await pane.page.locator('#canvas').boundingBox())!;
        await pane.page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
        await pane.page.mouse.down();
        await pane.page.mouse.move(box.x + box.width / 2 + 90, box.y + box.height / 2 + 30, { steps: 4 });
        await pane.page.mouse.up();
        expect(await drawn(pane, before)).toBeGreaterThan(before);
        expect(await pane.saidNothing('select')).toBe(true);
        await pane.close();
    });

    test('what the cursor stands in is lit up in the editor\'s own color', async () => {
        const pane = await opened({ theme: 'light' });
        const before = await spots(pane), count = await frames(pane);
        const keys = content.pieces.filter(({ part }) => part === 'bottom').map(({ key }) => key);
        await pane.say({ type: 'selection', keys, reveal: false });
        await drawn(pane, count);
        const after = await spots(pane);
        const changed = [...after].reduce((sum, [color, times]) => sum + Math.max(0, times - (before.get(color) ?? 0)), 0);
        expect(changed).toBeGreaterThan(60);
        const lit = await frames(pane);
        await pane.say({ type: 'selection', keys: [], reveal: false });
        await drawn(pane, lit);
        expect(await spots(pane)).toEqual(before);
        await pane.close();
    });

    test('holds no more on the graphics card after the cursor has moved and the text has changed than before', async () => {
        const pane = await opened();
        const held = async (): Promise<number> => { await drawn(pane, -1); return pane.page.evaluate(() => Number(document.querySelector('canvas')?.dataset['forms'])); };
        const keys = (part: string) => content.pieces.filter(piece => piece.part === part).map(({ key }) => key);
        await pane.say({ type: 'selection', keys: keys('side'), reveal: false });
        const before = await held();
        for (let move = 0; move < runs(16, 4); move++) {
            await pane.say({ type: 'selection', keys: keys(move % 2 === 0 ? 'bottom' : 'side'), reveal: false });
            await drawn(pane, -1);
        }
        expect(await held()).toBe(before);
        for (const edit of [spoiled, message, spoiled, message]) {
            await pane.say(edit);
            await drawn(pane, -1);
        }
        expect(before).toBeGreaterThan(5);
        expect(await held()).toBe(before);
        await pane.close();
    });

    test('keys walk through the pieces by name, turn it, and lead to the words', async () => {
        const pane = await opened();
        await pane.forget();
        await pane.page.focus('#canvas');
        await pane.page.keyboard.press('n');
        await pane.page.keyboard.press('n');
        const second = content.pieces[1]!;
        await pane.page.waitForFunction(words => document.querySelector('#picked')?.textContent?.includes(words), second.words);
        expect(await pane.page.locator('[aria-live]').first().textContent()).toContain(second.words);
        expect(await pane.saidNothing('select')).toBe(true);
        await pane.page.keyboard.press('p');
        await pane.page.keyboard.press('p');
        const last = content.pieces.at(-1)!;
        await pane.page.waitForFunction(words => document.querySelector('#picked')?.textContent?.replaceAll('⁄', '/').includes(words), last.words);
        await pane.page.keyboard.press('Enter');
        expect((await pane.sent('select'))[0]!.at).toEqual(content.sources[last.at]);
        for (const key of ['ArrowLeft', 'ArrowUp', 'Shift+ArrowRight', '+', '-', 'Home']) {
            const before = await frames(pane);
            await pane.page.keyboard.press(key);
            expect(await drawn(pane, before), key).toBeGreaterThan(before);
        }
        await pane.page.keyboard.press('Escape');
        await pane.page.waitForFunction(() => document.querySelector('#picked .link') === null);
        await pane.close();
    });

    test('parts come and go, and walking passes those that are gone', async () => {
        const pane = await opened();
        const before = await spots(pane);
        await pane.page.click('#parts summary');
        for (const part of ['blocking', 'spacer', 'side', 'cleat', 'band', 'trim']) await pane.page.uncheck(`#part-${part}`);
        await pane.page.keyboard.press('Escape');
        await drawn(pane, 0);
        expect(await spots(pane)).not.toEqual(before);
        await pane.page.focus('#canvas');
        await pane.page.keyboard.press('n');
        const first = content.pieces.find(({ part }) => part === 'bottom')!;
        await pane.page.waitForFunction(words => document.querySelector('#picked')?.textContent?.includes(words), first.words);
        expect((await pane.kept() as { own: { parts: Record<string, boolean> } }).own.parts).toMatchObject({ side: false, band: false });
        await pane.close();
    });

    test('taken apart and cut open, while the slider moves and when it is let go', async () => {
        const pane = await opened({ theme: 'light', width: 600 });
        for (const [slider, name] of [['#apart', 'apart'], ['#cut', 'cut']] as const) {
            const before = await spots(pane), count = await frames(pane);
            await pane.page.locator(slider).focus();
            for (let step = 0; step < 5; step++) await pane.page.keyboard.press('PageUp');
            await drawn(pane, count);
            await pane.page.click('#act-fit');
            await drawn(pane, 0);
            await pane.picture(`view-${name}`);
            expect(await spots(pane)).not.toEqual(before);
            expect(Number((await pane.kept() as { own: Record<string, string> }).own[name])).toBeGreaterThan(20);
            await pane.page.fill(slider, '0');
        }
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });

    describe('putting up', () => {
        const words = (pane: PanePage): Promise<string> => pane.page.$eval('#player-words', said => said.textContent ?? '');
        const playing = async (options: PaneOptions = {}): Promise<PanePage> => {
            const pane = await opened(options), before = await frames(pane);
            await pane.page.click('#play-open');
            await drawn(pane, before);
            return pane;
        };

        test.each(looks('view', [400, 900, 1600]))('has nothing against it in %s at %i pixels', async (theme, width) => {
            const pane = await playing({ theme, width, height: 900 });
            for (let step = 0; step < 7; step++) await pane.page.click('#act-on');
            await drawn(pane, -1);
            await pane.picture(`view-put-up-${theme}-${width}`);
            expect(await pane.violations()).toEqual([]);
            expect(pane.complaints).toEqual([]);
            await pane.close();
        });

        test('step by step, by buttons and by keys, said in words; what is not up yet is not there', async () => {
            const pane = await playing({ theme: 'light' }), { page } = pane, { steps } = content.order!;
            expect(await words(pane)).toContain('Nothing is up yet');
            const empty = await spots(pane);
            await page.click('#act-on');
            expect(await words(pane)).toContain(`Step 1 of ${steps.length} is done: ${steps[0]!.what}`);
            await page.waitForFunction(() => document.querySelector('[aria-live]')?.textContent?.startsWith('Step 1 of '));
            await page.focus('#scrub');
            await page.keyboard.press('ArrowRight');
            expect(await words(pane)).toContain('Step 2 of');
            await page.keyboard.press('End');
            expect(await words(pane)).toContain(`Step ${steps.length} of ${steps.length} is done`);
            await drawn(pane, -1);
            expect(await spots(pane)).not.toEqual(empty);
            expect(await pane.kept()).toMatchObject({ own: { play: true, step: steps.length } });
            await page.keyboard.press('Home');
            await drawn(pane, -1);
            expect(await spots(pane)).toEqual(empty);
            await pane.close();
        });

        test('plays by the space bar, forwards and back, and stands still when it is stopped', async () => {
            const pane = await playing(), { page } = pane;
            await page.focus('#scrub');
            await page.keyboard.press(' ');
            expect(await page.getAttribute('#act-play', 'aria-label')).toBe('Stop');
            await page.waitForFunction(() => Number(document.querySelector<HTMLInputElement>('#scrub')!.value) >= 2);
            await page.keyboard.press(' ');
            expect(await page.getAttribute('#act-play', 'aria-label')).toBe('Play');
            const still = await words(pane), count = await drawn(pane, -1);
            expect(still).toContain('is done');
            await page.waitForTimeout(300);
            expect([await words(pane), await frames(pane)]).toEqual([still, count]);
            await page.click('#act-play-back');
            await page.waitForFunction(() => document.querySelector('#player-words')!.textContent!.startsWith('Nothing is up'));
            expect(await page.getAttribute('#act-play-back', 'aria-label')).toBe('Play backwards');
            expect(pane.complaints).toEqual([]);
            await pane.close();
        });

        test('for who wants nothing to move it goes on in jumps', async () => {
            const pane = await playing(), { page } = pane;
            await page.emulateMedia({ reducedMotion: 'reduce' });
            await page.click('#act-play');
            const seen = await page.evaluate(() => new Promise<string[]>(resolve => {
                const said: string[] = [], place = document.querySelector('#player-words')!;
                new MutationObserver(() => { said.push(place.textContent ?? ''); if (said.length >= 2) resolve(said); }).observe(place, { childList: true, characterData: true, subtree: true });
            }));
            for (const each of seen) expect(each).toContain('is done');
            await page.click('#act-play');
            await page.emulateMedia({ reducedMotion: null });
            await pane.close();
        });

        test('opens at a step that was asked for elsewhere, and waits for an order that is worked out', async () => {
            const pane = await opened(), { page } = pane;
            await pane.say({ type: 'picked', key: 'step.5' });
            expect(await words(pane)).toContain('Step 5 of');
            await pane.say({ ...message, content: { ...content, order: null } as ContentMessage['content'] });
            expect(await page.textContent('#player')).toContain('Working out');
            await pane.say(message);
            await page.waitForFunction(() => document.querySelector('#player-words')?.textContent?.startsWith('Step 5 of'));
            await pane.close();
        });
    });

    test('follows the theme while it is open', async () => {
        const pane = await opened({ theme: 'light' });
        const before = await spots(pane), count = await frames(pane);
        await pane.page.evaluate(() => { document.documentElement.style.setProperty('--vscode-editor-background', '#101010'); document.body.className = 'vscode-dark'; });
        await drawn(pane, count);
        expect(await spots(pane)).not.toEqual(before);
        await pane.close();
    });

    test('without WebGL there is a list of the pieces by name, and no complaint', async () => {
        const pane = await PanePage.open('view', { theme: 'light', before: () => { HTMLCanvasElement.prototype.getContext = () => null; } });
        await pane.say(message);
        await pane.page.waitForSelector('#list li');
        expect(await pane.page.locator('#list li').count()).toBe(content.pieces.length);
        expect(await pane.page.locator('#no-picture').isVisible()).toBe(true);
        expect(await pane.page.locator('#stage').isVisible()).toBe(false);
        await pane.picture('view-without-webgl');
        expect(await pane.violations()).toEqual([]);
        await pane.forget();
        await pane.page.locator('#list li button').nth(5).click();
        expect((await pane.sent('select'))[0]!.at).toEqual(content.sources[content.pieces[5]!.at]);
        await pane.close();
    });
});
