// Takes the pictures of the walkthrough, syntaxes/walkthrough/*.webp, from the pages of the example's dining room. Run by hand after a change of
// what they show: npm run build && node src/build/walkthrough-pictures.mjs. The pane of changes has no page without a history: its picture is the one that its test keeps,
// FULL=1 npm test -- tests/panes/changes.test.ts
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { browserArguments, browserPath } from './editor-server.mjs';
import { main, root, run } from './ready.mjs';

/** What the picture shows of a page: so wide is the window, so much of its top is left out, and so high is the picture; CSS pixels. */
const PICTURES = {
    plan: { width: 1000, top: 60, height: 700 }, section: { width: 900, top: 60, height: 640 }, 'cut-list': { width: 760, top: 0, height: 560 },
    boards: { width: 760, top: 0, height: 560 }, view: { width: 1000, top: 60, height: 640 }, estimate: { width: 760, top: 0, height: 560 },
    suggest: { width: 900, top: 0, height: 650 }, 'put-up': { width: 760, top: 0, height: 560 }, changes: { width: 900, top: 0, height: 660 },
};
const KEPT = join(root, 'out/pictures/panes/changes-light-900.png');
/** The editor shows them about so wide. */
const SHOWN = 720, QUALITY = 40;

await main(async () => {
    const folder = mkdtempSync(join(tmpdir(), 'cofferwright-pictures-'));
    const browser = await chromium.launch({ executablePath: browserPath(), args: browserArguments });
    try {
        for (const [name, { width, top, height }] of Object.entries(PICTURES)) {
            const page = await browser.newPage({ viewport: { width, height: Math.max(top + height, 900) } });
            await page.goto(pathToFileURL(name === 'changes' ? KEPT : printed(name, join(folder, name))).href);
            await page.evaluate(() => document.fonts.ready);
            const session = await page.context().newCDPSession(page);
            const clip = { x: 0, y: top, width, height, scale: SHOWN / width };
            const { data } = await session.send('Page.captureScreenshot', { format: 'webp', quality: QUALITY, clip });
            writeFileSync(join(root, `syntaxes/walkthrough/${name}.webp`), Buffer.from(data, 'base64'));
            await page.close();
        }
    } finally {
        await browser.close();
        rmSync(folder, { recursive: true, force: true });
    }
});

function printed(name, out) {
    run(process.execPath, [join(root, 'dist/cli/main.js'), 'print', '--page', name, '--quick', '--room', 'dining', '--out', out, join(root, 'examples/quince-lane')], { quiet: true });
    return join(out, readdirSync(out).find(file => file.endsWith('.html')));
}
