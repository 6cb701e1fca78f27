// Takes the README's pictures of the editor, examples/pictures/editor.png and plan-pane.png: a copy of the examples, with a mistake in it. Run
// by hand after a change of what the editor shows: node src/build/editor-picture.mjs
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { browserArguments, browserPath, serveEditor } from './editor-server.mjs';
import { packageExtension } from './package.mjs';
import { main, root, run } from './ready.mjs';

const settings = {
    'workbench.colorTheme': 'Default Dark Modern', 'editor.fontSize': 14, 'editor.minimap.enabled': false, 'files.autoSave': 'off', 'window.commandCenter': false,
    'workbench.secondarySideBar.defaultVisibility': 'hidden', 'workbench.layoutControl.enabled': false, 'editor.stickyScroll.enabled': false, 'problems.defaultViewMode': 'tree',
};

await main(async () => {
    const editor = join(root, '.cache/editor');
    run('bash', [join(root, 'src/build/install-editor.sh'), editor], { quiet: true });
    const { path: vsix } = await packageExtension();
    const { folder, port, stop } = await serveEditor({ editor, vsix, settings });
    let browser;
    try {
        const house = join(folder, 'house');
        cpSync(join(root, 'examples'), house, { recursive: true, filter: path => !path.endsWith('pictures') });
        const beam = join(house, 'details/groove-box.coffer');
        const text = readFileSync(beam, 'utf8'), wrong = text.replace('spacer: Length = 5"', 'spacer: Length = 5 1/2"');
        if (wrong === text) throw new Error('The example has no such spacer any more.');
        writeFileSync(beam, wrong);

        browser = await chromium.launch({ executablePath: browserPath(), args: browserArguments });
        const page = await browser.newPage({ viewport: { width: 1600, height: 1000 } });
        await page.goto(`http://127.0.0.1:${port}/?folder=${encodeURIComponent(house)}`);
        await open(page, 'dining-room.coffer');
        await page.waitForSelector('text=/deep,/', { timeout: 30_000 });
        await page.keyboard.press('Control+\\');
        await open(page, 'groove-box.coffer');
        await page.keyboard.press('Control+Shift+M');
        const squiggle = await page.waitForSelector('.squiggly-error', { timeout: 30_000 });
        await page.waitForSelector('.markers-panel .monaco-list-row', { timeout: 30_000 });
        await page.waitForTimeout(2000);
        await squiggle.hover({ force: true });
        await page.waitForSelector('.monaco-hover:not(.hidden) .hover-contents', { timeout: 30_000 });
        await page.waitForTimeout(1500);
        await page.screenshot({ path: join(root, 'examples/pictures/editor.png') });

        // the same mistake on the plan: the detail at the left, the plan at the right, the cursor in the spacers
        await page.keyboard.press('Escape');
        await page.keyboard.press('Control+Shift+M');
        await page.keyboard.press('Control+K');
        await page.keyboard.press('Control+W');
        await page.waitForTimeout(1000);
        await open(page, 'dining-room.coffer');
        await page.keyboard.press('Control+B');
        await command(page, 'Show Ceiling Plan');
        const plan = page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame');
        await plan.locator('#finding-0 button').click({ timeout: 60_000 });
        await page.waitForSelector('.tab.active:has-text("groove-box.coffer")');
        await plan.locator('.lit').first().waitFor({ state: 'attached' });
        await page.waitForTimeout(2500);
        await page.screenshot({ path: join(root, 'examples/pictures/plan-pane.png') });
    } catch (error) {
        await browser?.contexts()[0]?.pages()[0]?.screenshot({ path: join(root, 'out/editor-picture-failure.png') });
        throw error;
    } finally {
        await browser?.close();
        await stop();
    }
});

async function command(page, title) {
    await page.keyboard.press('F1');
    await page.waitForSelector('.quick-input-widget input');
    await page.keyboard.type(title);
    await page.waitForSelector(`.quick-input-list .monaco-list-row.focused:has-text("${title}")`);
    await page.keyboard.press('Enter');
}

/** Opens a file by its name, as fingers do. */
async function open(page, name) {
    await page.waitForSelector('.monaco-workbench .explorer-folders-view .monaco-list-row', { timeout: 60_000 });
    await page.keyboard.press('Control+P');
    await page.waitForSelector('.quick-input-widget input');
    await page.keyboard.type(name);
    await page.waitForSelector(`.quick-input-list .monaco-list-row.focused:has-text("${name}")`);
    await page.keyboard.press('Enter');
    await page.waitForSelector(`.tab.active:has-text("${name}")`);
    await page.waitForTimeout(1500);
}
