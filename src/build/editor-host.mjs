// Serves a real editor to a headless browser, with an extension installed from its package and a suite running in its
// extension host. What is not needed for that is switched off; nothing is asked of any other machine.
import { spawn, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';

const settings = {
    'workbench.startupEditor': 'none', 'security.workspace.trust.enabled': false, 'telemetry.telemetryLevel': 'off', 'extensions.autoCheckUpdates': false,
    'extensions.autoUpdate': false, 'extensions.ignoreRecommendations': true, 'update.mode': 'none', 'workbench.enableExperiments': false,
    'git.enabled': false, 'chat.disableAIFeatures': true, 'npm.autoDetect': 'off', 'workbench.tips.enabled': false,
    // a browser's workbench saves by itself; a test's text must not reach the disk
    'files.autoSave': 'off',
    // words of the text would answer a completion even where the server is dead
    'editor.wordBasedSuggestions': 'off',
};
const browserArguments = [
    '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync',
    '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
];

/**
 * Runs a suite and returns the exit code of its `run()`: 0 where it resolved.
 * @param {{ editor: string, vsix: string, suite: string, workspace: string, results: string, pictures: string, seconds: number, log: (text: string) => void }} given
 * `editor`: folder of install-editor.sh. `suite`: a CommonJS module that exports `run`. `results`: the file the suite
 * writes its results to. `pictures`: folder for pictures the suite asks for. `seconds`: after these the run has failed.
 */
export async function runInEditor({ editor, vsix, suite, workspace, results, pictures, seconds, log }) {
    const folder = mkdtempSync(join(tmpdir(), 'cofferwright-editor-'));
    for (const name of ['user/User', 'extensions', 'home', 'driver']) mkdirSync(join(folder, name), { recursive: true });
    cpSync(workspace, join(folder, 'workspace'), { recursive: true });
    writeFileSync(join(folder, 'config.yaml'), '');
    writeFileSync(join(folder, 'user/User/settings.json'), JSON.stringify(settings));
    // an extension under development must be named, or the editor runs no suite; the one that is tested is installed
    writeFileSync(join(folder, 'driver/package.json'), JSON.stringify({ name: 'suite-driver', publisher: 'cofferwright', version: '0.0.0', engines: { vscode: '*' } }));

    const home = join(folder, 'home');
    const env = {
        ...process.env, HOME: home, XDG_DATA_HOME: home, XDG_CONFIG_HOME: home, XDG_CACHE_HOME: home,
        EXTENSIONS_GALLERY: '{}', COFFERWRIGHT_RESULTS: results, COFFERWRIGHT_PICTURES: pictures,
    };
    delete env.VSCODE_IPC_HOOK_CLI;
    delete env.NODE_OPTIONS;
    const program = [
        join(editor, 'node_modules/code-server/out/node/entry.js'), '--config', join(folder, 'config.yaml'),
        '--user-data-dir', join(folder, 'user'), '--extensions-dir', join(folder, 'extensions'),
    ];
    const installed = spawnSync(process.execPath, [...program, '--install-extension', vsix, '--force'], { env, encoding: 'utf8' });
    if (installed.status !== 0) throw new Error(`the editor did not install ${vsix}:\n${installed.stdout}${installed.stderr}`);

    const port = await freePort();
    const server = spawn(process.execPath, [
        ...program, '--bind-addr', `127.0.0.1:${port}`, '--auth', 'none', '--disable-telemetry', '--disable-update-check', '--disable-workspace-trust',
        '--disable-getting-started-override', '--disable-proxy',
    ], { env, stdio: 'ignore' });
    let browser;
    try {
        await answers(`http://127.0.0.1:${port}/healthz`, 60);
        browser = await chromium.launch({ executablePath: browserPath(), args: browserArguments });
        const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
        const ended = new Promise(resolve => { void page.exposeFunction('codeAutomationExit', resolve); });
        await page.exposeFunction('codeAutomationLog', (type, words) => {
            if (/^(not )?ok - /.test(String(words[0])) || type === 'error') log(words.map(word => String(word).slice(0, 400)).join(' '));
        });
        const painting = setInterval(() => { void paintWanted(page, pictures); }, 50);
        const remote = path => `vscode-remote://127.0.0.1:${port}${path}`;
        const payload = [['extensionDevelopmentPath', remote(join(folder, 'driver'))], ['extensionTestsPath', remote(suite)], ['skipWelcome', 'true']];
        await page.goto(`http://127.0.0.1:${port}/?folder=${encodeURIComponent(join(folder, 'workspace'))}&payload=${encodeURIComponent(JSON.stringify(payload))}`);
        try {
            return await within(seconds, 'the suite', ended);
        } catch (error) {
            await page.screenshot({ path: join(pictures, 'failure.png') });
            throw error;
        } finally {
            clearInterval(painting);
        }
    } finally {
        await browser?.close();
        await stop(server);
        rmSync(folder, { recursive: true, force: true });
    }
}

const beingPainted = new Set();
/** The suite asks for a picture by a file NAME.wanted and waits for NAME.png. */
async function paintWanted(page, pictures) {
    for (const wanted of readdirSync(pictures).filter(name => name.endsWith('.wanted'))) {
        const name = wanted.slice(0, -'.wanted'.length);
        if (beingPainted.has(name)) continue;
        beingPainted.add(name);
        const image = await page.screenshot();
        writeFileSync(join(pictures, `${name}.png`), image);
        rmSync(join(pictures, wanted), { force: true });
        beingPainted.delete(name);
    }
}

function browserPath() {
    const found = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(path => path && existsSync(path));
    if (!found) throw new Error('No Chromium found: install it (apt-get install chromium) or name it in the environment variable CHROMIUM.');
    return found;
}

function freePort() {
    return new Promise((resolve, reject) => {
        const server = createServer().once('error', reject).listen(0, '127.0.0.1', () => {
            const { port } = server.address();
            server.close(() => resolve(port));
        });
    });
}

async function answers(url, seconds) {
    const end = Date.now() + seconds * 1000;
    for (;;) {
        const response = await fetch(url).catch(() => undefined);
        if (response?.ok) return;
        if (Date.now() > end) throw new Error('the editor did not start');
        await new Promise(resolve => setTimeout(resolve, 100));
    }
}

function within(seconds, what, promise) {
    let timer;
    const late = new Promise((_, reject) => { timer = setTimeout(() => reject(new Error(`${what} did not end within ${seconds} s`)), seconds * 1000); });
    return Promise.race([promise, late]).finally(() => clearTimeout(timer));
}

async function stop(server) {
    if (server.exitCode !== null || server.signalCode !== null) return;
    const gone = new Promise(resolve => server.once('exit', resolve));
    server.kill('SIGTERM');
    await within(5, 'the editor', gone).catch(() => server.kill('SIGKILL'));
}
