// By the keyboard alone, through the real workbench: the walkthrough, a pane and from its parts to their words, the Testing view. The keys that panes
// know by themselves are held by tests/panes. Part of npm run test:editor.
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { pick, until } from './driving.mjs';
import { inPane } from './editor-host.mjs';
import { browserArguments, browserPath, serveEditor } from './editor-server.mjs';

const PLAN = 'Ceiling Plan';
/** Of each something is walked to in the plan, and its words are asked for. */
const PARTS = { wall: 'wall.', coffer: 'coffer.', line: 'line.', dimension: 'dimensions.' };
const MOST_STOPS = 60, MOST_PARTS = 400;

/** @returns {Promise<{ name: string, ok: boolean, milliseconds: number, error?: string }>} as a result of the suite */
export async function testKeys({ editor, vsix, workspace, pictures }) {
    const name = 'by the keyboard alone: the walkthrough, from parts of the plan to their words and back, and rooms tried in the Testing view';
    const began = Date.now();
    const { folder, port, stop } = await serveEditor({ editor, vsix });
    let browser, page;
    try {
        cpSync(workspace, join(folder, 'workspace'), { recursive: true });
        browser = await chromium.launch({ executablePath: browserPath(), args: browserArguments });
        page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
        // other programs may have the machine
        page.setDefaultTimeout(120_000);
        await page.goto(`http://127.0.0.1:${port}/?folder=${encodeURIComponent(join(folder, 'workspace'))}`);
        await page.waitForSelector('.monaco-workbench .explorer-folders-view');
        await pick(page, 'Control+P', 'den.coffer');
        await page.waitForSelector('text=/9 coffers/');
        await fromPlanToWords(page);
        await tryRooms(page);
        await walkthrough(page);
        return { name, ok: true, milliseconds: Date.now() - began };
    } catch (error) {
        await page?.screenshot({ path: join(pictures, 'keys-failure.png') });
        return { name, ok: false, milliseconds: Date.now() - began, error: String(error) };
    } finally {
        await browser?.close();
        await stop();
    }
}

async function fromPlanToWords(page) {
    await chord(page, 'p');
    await until(page, 'nine coffers', async () => await at(page, `document.querySelectorAll('[data-key^="coffer."]').length`) === 9, () => at(page, 'document.body.innerText'));
    await onText(page);
    await ontoPlan(page);
    await pressUntil(page, 'Tab', MOST_STOPS, 'the drawing', () => at(page, `document.activeElement?.matches('.part')`));
    for (const [part, key] of Object.entries(PARTS)) {
        await page.keyboard.press('Home');
        await pressUntil(page, 'PageDown', MOST_PARTS, `a ${part}`, () => at(page, `document.activeElement?.getAttribute('data-key')?.startsWith(${JSON.stringify(key)})`));
        await page.keyboard.press('Enter');
        await onText(page);
        await until(page, `the words of a ${part}`, () => page.evaluate(() => globalThis.document.querySelector('.editor-group-container.active .selected-text') !== null), () => at(page, `document.activeElement?.outerHTML`));
        await ontoPlan(page);
        await until(page, `the same ${part}, back on the plan`, () => at(page, `document.activeElement?.getAttribute('data-key')?.startsWith(${JSON.stringify(key)})`), () => at(page, `document.activeElement?.outerHTML.slice(0, 200)`));
    }
    await chord(page, 't');
    await onText(page);
}

async function tryRooms(page) {
    await pick(page, 'F1', 'Testing: Focus on Test Explorer View');
    await pick(page, 'F1', 'Test: Run All Tests');
    const focused = () => page.evaluate(() => globalThis.document.activeElement?.closest('.monaco-list')?.querySelector('.monaco-list-row.focused')?.getAttribute('aria-label') ?? '');
    await pick(page, 'F1', 'Testing: Focus on Test Explorer View');
    // the view begins with a field to filter by
    await pressUntil(page, 'Tab', 12, 'the list of rooms', () => page.evaluate(() => globalThis.document.activeElement?.closest('.monaco-list') !== null));
    await page.keyboard.press('Home');
    await until(page, 'the rooms tried', async () => /passed|failed/i.test(await focused()), focused);
    await page.keyboard.press('ArrowRight');
    await pressUntil(page, 'ArrowDown', 3, 'a room that is tried', async () => /^Den\b/.test(await focused()));
}

async function walkthrough(page) {
    await pick(page, 'F1', 'Welcome: Open Walkthrough...');
    await page.waitForSelector('.quick-input-list .monaco-list-row');
    await page.keyboard.type('Your first coffered ceiling');
    await page.waitForTimeout(500);
    await page.keyboard.press('Enter');
    await page.waitForSelector('.getting-started-step');
    await pressUntil(page, 'Tab', MOST_STOPS, 'the small job of the walkthrough',
        // the step itself has these words in it too
        () => page.evaluate(() => globalThis.document.activeElement?.matches('.monaco-button') && globalThis.document.activeElement.textContent.trim() === 'Start with a Small Job'));
    await page.keyboard.press('Enter');
    await page.waitForSelector('.tab:has-text("ceiling.coffer")');
}

/** Alt and C, then the letter of a pane. */
async function chord(page, letter) {
    await page.keyboard.press('Alt+c');
    await page.keyboard.press(letter);
}

async function ontoPlan(page) {
    await chord(page, 'p');
    await until(page, 'the hands on the plan', () => at(page, 'document.hasFocus()'), () => at(page, 'document.title'));
}

function onText(page) {
    const where = () => page.evaluate(() => globalThis.document.activeElement?.className);
    return until(page, 'the hands on the text', () => page.evaluate(() => globalThis.document.activeElement?.closest('.monaco-editor') !== null && globalThis.document.hasFocus()), where);
}

async function pressUntil(page, key, most, what, isThere) {
    for (let times = 0; times <= most; times++) {
        if (await isThere()) return;
        await page.keyboard.press(key);
        await page.waitForTimeout(20);
    }
    throw new Error(`${most} times ${key} do not lead to ${what}`);
}

/** What something comes to in the plan. */
async function at(page, expression) {
    return JSON.parse(await inPane(page, JSON.stringify({ title: PLAN, expression })));
}
