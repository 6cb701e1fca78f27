// Runs a suite in the extension host of a real editor, in a headless browser: in the host on Node, as on the desktop and in
// a remote window, or in the browser's own, which is a web worker.
import { cpSync, existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { browserArguments, browserPath, serveEditor, within } from './editor-server.mjs';

const settings = {
    // a browser's workbench saves by itself; a test's text must not reach the disk
    'files.autoSave': 'off',
    // words of the text would answer a completion even where the server is dead
    'editor.wordBasedSuggestions': 'off',
};
const RESULTS = 'cofferwright-results ';

/**
 * Runs a suite and returns the exit code of its `run()`: 0 where it resolved.
 * @param {{ editor: string, vsix: string, suite: string, web: boolean, packed: string, workspace: string, results: string, pictures: string, seconds: number, log: (text: string) => void }} given
 * `editor`: folder of install-editor.sh. `suite`: a CommonJS module that exports `run`. `web`: in the browser's own host.
 * `packed`: the folder the package was made from. `results`: the file the suite's results go to. `pictures`: folder for pictures the suite asks for. `seconds`: after
 * these the run has failed.
 */
export async function runInEditor({ editor, vsix, suite, web, packed, workspace, results, pictures, seconds, log }) {
    const { folder, port, stop } = await serveEditor({ editor, vsix, settings, env: { COFFERWRIGHT_RESULTS: results, COFFERWRIGHT_PICTURES: pictures } });
    let browser;
    try {
        cpSync(workspace, join(folder, 'workspace'), { recursive: true });
        // where the suite meets the driver: on Node in the folder for pictures, in the browser in one of the workspace
        const asked = web ? join(folder, 'workspace/.driver') : pictures;
        mkdirSync(asked, { recursive: true });
        // An extension under development must be named, or the editor runs no suite. On Node it is one for that alone, and
        // the extension that is tested is installed. The browser's host runs only a suite that lies in an extension of its
        // own: there the tested one, as it was packed, is named, and the suite laid into it.
        const driver = join(folder, 'driver');
        if (web) cpSync(packed, driver, { recursive: true });
        else {
            mkdirSync(driver);
            writeFileSync(join(driver, 'package.json'), JSON.stringify({ name: 'suite-driver', publisher: 'cofferwright', version: '0.0.0', engines: { vscode: '*' } }));
        }
        cpSync(suite, join(driver, 'suite.js'));

        browser = await chromium.launch({ executablePath: browserPath(), args: browserArguments });
        const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
        const ended = new Promise(resolve => { void page.exposeFunction('codeAutomationExit', resolve); });
        await page.exposeFunction('codeAutomationLog', (type, words) => {
            const first = String(words[0]);
            if (first.startsWith(RESULTS)) writeFileSync(results, first.slice(RESULTS.length));
            else if (/^(not )?ok - /.test(first) || type === 'error') log(words.map(word => String(word).slice(0, 400)).join(' '));
        });
        const looking = setInterval(() => { void lookFor(page, asked); }, 50);
        const remote = path => `vscode-remote://127.0.0.1:${port}${path}`;
        const payload = [['extensionDevelopmentPath', remote(driver)], ['extensionTestsPath', remote(join(driver, 'suite.js'))], ['skipWelcome', 'true'], ...web ? [['extensionDevelopmentKind', 'web']] : []];
        await page.goto(`http://127.0.0.1:${port}/?folder=${encodeURIComponent(join(folder, 'workspace'))}&payload=${encodeURIComponent(JSON.stringify(payload))}`);
        try {
            return await within(seconds, 'the suite', ended);
        } catch (error) {
            await page.screenshot({ path: join(pictures, 'failure.png') });
            throw error;
        } finally {
            clearInterval(looking);
        }
    } finally {
        await browser?.close();
        await stop();
    }
}

const beingAnswered = new Set();
/**
 * The suite asks for a picture by a file NAME.wanted, for words on the screen by NAME.wanted-words, for what goes on in a pane by
 * NAME.wanted-pane, and waits for NAME.png, NAME.txt.
 */
async function lookFor(page, folder) {
    for (const wanted of readdirSync(folder)) {
        const [, name, what] = /^(.*)\.(wanted|wanted-words|wanted-pane)$/.exec(wanted) ?? [];
        const question = join(folder, wanted);
        // what is still being written does not end with a line yet
        if (!name || beingAnswered.has(wanted) || !readFileSync(question, 'utf8').endsWith('\n')) continue;
        beingAnswered.add(wanted);
        const answer = join(folder, `${name}.${what === 'wanted' ? 'png' : 'txt'}`);
        try {
            const found = what === 'wanted' ? await page.screenshot() : what === 'wanted-pane' ? await inPane(page, readFileSync(question, 'utf8')) : await wordsOn(page, readFileSync(question, 'utf8'));
            writeFileSync(`${answer}.new`, found);
            rmSync(question, { force: true });
            renameSync(`${answer}.new`, answer);
        } finally {
            if (existsSync(question)) rmSync(question);
            beingAnswered.delete(wanted);
        }
    }
}

/** What an expression comes to in the pane of a title, as JSON; null where there is no such pane, or its page is being loaded. */
export async function inPane(page, question) {
    const { title, expression } = JSON.parse(question);
    for (const frame of page.frames()) {
        // a pane that is gone, or is being loaded, is no mistake
        const found = await frame.evaluate(`document.title === ${JSON.stringify(title)} ? [${expression}] : null`).catch(() => null);
        if (found) return JSON.stringify(found[0] ?? null);
    }
    return 'null';
}

/** The text of a part of the page, and what a screen reader says of it. */
function wordsOn(page, selector) {
    return page.evaluate(given => [...globalThis.document.querySelectorAll(given)].flatMap(part =>
        [part.innerText, ...[part, ...part.querySelectorAll('[aria-label]')].map(each => each.getAttribute('aria-label'))]).filter(Boolean).join('\n'), selector);
}
