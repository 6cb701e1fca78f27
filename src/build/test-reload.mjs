// A pane after the window has been loaded anew: what the suite cannot test, since it goes with the window. Part of npm run test:editor.
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { inPane } from './editor-host.mjs';
import { browserArguments, browserPath, serveEditor } from './editor-server.mjs';

const QUESTION = JSON.stringify({ title: 'Ceiling Plan', expression: `({ coffers: document.querySelectorAll('[data-key^="coffer."]').length, pinned: document.getElementById('pin')?.getAttribute('aria-pressed'), sides: document.getElementById('layer-sides')?.checked })` });

/**
 * Opens a room and its plan, pins it and switches a layer off, loads the window anew, and looks whether all of it is there again.
 * @returns {Promise<{ name: string, ok: boolean, milliseconds: number, error?: string }>} as a result of the suite
 */
export async function testReload({ editor, vsix, workspace, pictures }) {
    const name = 'a pane comes back after a reload: its room, pinned as it was, with its layers';
    const began = Date.now();
    const { folder, port, stop } = await serveEditor({ editor, vsix });
    let browser;
    try {
        cpSync(workspace, join(folder, 'workspace'), { recursive: true });
        browser = await chromium.launch({ executablePath: browserPath(), args: browserArguments });
        const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
        const address = `http://127.0.0.1:${port}/?folder=${encodeURIComponent(join(folder, 'workspace'))}`;
        await page.goto(address);
        await page.waitForSelector('.monaco-workbench .explorer-folders-view', { timeout: 60_000 });
        await pick(page, 'Control+P', 'den.coffer');
        await page.waitForSelector('text=/9 coffers/', { timeout: 60_000 });
        await pick(page, 'F1', 'Show Ceiling Plan');
        await seen(page, 'nine coffers', ({ coffers }) => coffers === 9);
        await inPane(page, JSON.stringify({ title: 'Ceiling Plan', expression: `[document.getElementById('pin').click(), document.getElementById('layer-sides').click()].length` }));
        await seen(page, 'pinned, without sides', ({ pinned, sides }) => pinned === 'true' && sides === false);
        // by the editor's own command, which keeps what the window shows before it goes
        const gone = page.waitForEvent('load', { timeout: 60_000 });
        await pick(page, 'F1', 'Developer: Reload Window');
        await gone;
        await seen(page, 'the same again', ({ coffers, pinned, sides }) => coffers === 9 && pinned === 'true' && sides === false);
        await page.screenshot({ path: join(pictures, 'reload.png') });
        return { name, ok: true, milliseconds: Date.now() - began };
    } catch (error) {
        return { name, ok: false, milliseconds: Date.now() - began, error: String(error) };
    } finally {
        await browser?.close();
        await stop();
    }
}

async function pick(page, key, words) {
    await page.keyboard.press(key);
    await page.waitForSelector('.quick-input-widget input', { state: 'visible' });
    await page.keyboard.type(words);
    await page.waitForSelector(`.quick-input-list .monaco-list-row:has-text("${words}")`);
    await page.waitForTimeout(500);
    await page.keyboard.press('Enter');
}

async function seen(page, what, isSo) {
    let last;
    for (let time = 0; time < 600; time++) {
        last = JSON.parse(await inPane(page, QUESTION));
        if (last && isSo(last)) return;
        await page.waitForTimeout(100);
    }
    throw new Error(`not seen: ${what}; the pane shows ${JSON.stringify(last)}`);
}
