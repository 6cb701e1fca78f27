// A pane after the window has been loaded anew: what the suite cannot test, since it goes with the window. Part of npm run test:editor.
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { pick, until } from './driving.mjs';
import { inPane } from './editor-host.mjs';
import { browserArguments, browserPath, serveEditor } from './editor-server.mjs';

const QUESTION = JSON.stringify({ title: 'Ceiling Plan', expression: `({ coffers: document.querySelectorAll('[data-key^="coffer."]').length, pinned: document.getElementById('pin')?.getAttribute('aria-pressed'), sides: document.getElementById('layer-sides')?.checked })` });

const CUTS = JSON.stringify({ title: 'Cut List', expression: `document.querySelectorAll('#page tr').length > 5 || null` });

/**
 * Opens a room, its cut list and before that its plan, pins the plan and switches a layer off, loads the window anew, and looks whether all of it is there
 * again: the plan at once, and the cut list, of which only the tab is there then, where it is asked for.
 * @returns {Promise<{ name: string, ok: boolean, milliseconds: number, error?: string }>} as a result of the suite
 */
export async function testReload({ editor, vsix, workspace, pictures }) {
    const name = 'panes come back after a reload: their room, pinned as they were, with their layers; none twice, and no text lands on them';
    const began = Date.now();
    const { folder, port, stop } = await serveEditor({ editor, vsix });
    let browser;
    try {
        cpSync(workspace, join(folder, 'workspace'), { recursive: true });
        browser = await chromium.launch({ executablePath: browserPath(), args: browserArguments });
        const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
        // other programs may have the machine
        page.setDefaultTimeout(120_000);
        const address = `http://127.0.0.1:${port}/?folder=${encodeURIComponent(join(folder, 'workspace'))}`;
        await page.goto(address);
        await page.waitForSelector('.monaco-workbench .explorer-folders-view', { timeout: 60_000 });
        await pick(page, 'Control+P', 'den.coffer');
        await page.waitForSelector('text=/9 coffers/', { timeout: 60_000 });
        await pick(page, 'F1', 'Show Cut List');
        await pick(page, 'F1', 'Show Ceiling Plan');
        await seen(page, 'nine coffers', ({ coffers }) => coffers === 9);
        await inPane(page, JSON.stringify({ title: 'Ceiling Plan', expression: `[document.getElementById('pin').click(), document.getElementById('layer-sides').click()].length` }));
        await seen(page, 'pinned, without sides', ({ pinned, sides }) => pinned === 'true' && sides === false);
        // by the editor's own command, which keeps what the window shows before it goes
        const gone = page.waitForEvent('load', { timeout: 60_000 });
        await pick(page, 'F1', 'Developer: Reload Window');
        await gone;
        await seen(page, 'the same again', ({ coffers, pinned, sides }) => coffers === 9 && pinned === 'true' && sides === false);
        await pick(page, 'F1', 'View: Focus First Editor Group');
        await pick(page, 'F1', 'Show Cut List');
        await until(page, 'its cut list', async () => await inPane(page, CUTS) !== 'null', () => tabs(page));
        await same(page, [['den.coffer'], ['Cut List', 'Ceiling Plan']]);
        await page.waitForSelector('.editor-group-container.active .monaco-editor');
        // the hands on a pane: a text that is opened goes to the other texts
        await pick(page, 'F1', 'Show Cut List');
        // a key that comes before the pane has the focus is lost on the way
        await page.waitForFunction(() => globalThis.document.activeElement?.tagName === 'IFRAME');
        await page.waitForTimeout(500);
        await pick(page, 'Control+P', 'yard.coffer');
        await same(page, [['den.coffer', 'yard.coffer'], ['Cut List', 'Ceiling Plan']]);
        await page.screenshot({ path: join(pictures, 'reload.png') });
        return { name, ok: true, milliseconds: Date.now() - began };
    } catch (error) {
        return { name, ok: false, milliseconds: Date.now() - began, error: String(error) };
    } finally {
        await browser?.close();
        await stop();
    }
}

async function seen(page, what, isSo) {
    await until(page, what, async () => {
        const last = JSON.parse(await inPane(page, QUESTION));
        return last && isSo(last);
    }, () => inPane(page, QUESTION));
}

/** The names of the tabs of each group; of panes without the room's. */
function tabs(page) {
    return page.evaluate(() => [...globalThis.document.querySelectorAll('.editor-group-container')].map(group =>
        [...group.querySelectorAll('.tab')].map(tab => tab.getAttribute('aria-label')?.replace(/, Editor Group \d+$/, '').split(' — ').at(-1))));
}

/** Whether there are these tabs and no others, once the editor has done what it was asked for. */
async function same(page, wanted) {
    await until(page, JSON.stringify(wanted), async () => JSON.stringify(await tabs(page)) === JSON.stringify(wanted), () => tabs(page));
}
