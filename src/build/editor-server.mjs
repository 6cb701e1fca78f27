// Serves a real editor on a loopback port, with the extension installed from its package: for the tests, and for people.
// What is not needed for that is switched off; nothing is asked of any other machine.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';

/** Settings of every editor that is served. */
const quiet = {
    'workbench.startupEditor': 'none', 'security.workspace.trust.enabled': false, 'telemetry.telemetryLevel': 'off', 'extensions.autoCheckUpdates': false,
    'extensions.autoUpdate': false, 'extensions.ignoreRecommendations': true, 'update.mode': 'none', 'workbench.enableExperiments': false,
    'git.enabled': false, 'chat.disableAIFeatures': true, 'npm.autoDetect': 'off', 'workbench.tips.enabled': false,
};

/**
 * @param {{ editor: string, vsix: string, settings?: object, env?: object, port?: number }} given `editor`: folder of
 * install-editor.sh; `settings`: of the user, over those above; `env`: for the editor; `port`: a free one where none is named
 * @returns {Promise<{ folder: string, port: number, stop: () => Promise<void> }>} `folder`: of this editor alone, for what
 * is to be opened in it; `stop` ends the editor and removes it
 */
export async function serveEditor({ editor, vsix, settings = {}, env: given = {}, port: wanted }) {
    const folder = mkdtempSync(join(tmpdir(), 'cofferwright-editor-'));
    for (const name of ['user/User', 'extensions', 'home']) mkdirSync(join(folder, name), { recursive: true });
    writeFileSync(join(folder, 'config.yaml'), '');
    writeFileSync(join(folder, 'user/User/settings.json'), JSON.stringify({ ...quiet, ...settings }));

    const home = join(folder, 'home');
    const env = { ...process.env, HOME: home, XDG_DATA_HOME: home, XDG_CONFIG_HOME: home, XDG_CACHE_HOME: home, EXTENSIONS_GALLERY: '{}', ...given };
    delete env.VSCODE_IPC_HOOK_CLI;
    delete env.NODE_OPTIONS;
    const program = [
        join(editor, 'node_modules/code-server/out/node/entry.js'), '--config', join(folder, 'config.yaml'),
        '--user-data-dir', join(folder, 'user'), '--extensions-dir', join(folder, 'extensions'),
    ];
    let server;
    const stop = async () => {
        if (server) await end(server);
        rmSync(folder, { recursive: true, force: true });
    };
    try {
        const installed = spawnSync(process.execPath, [...program, '--install-extension', vsix, '--force'], { env, encoding: 'utf8' });
        if (installed.status !== 0) throw new Error(`the editor did not install ${vsix}:\n${installed.stdout}${installed.stderr}`);
        const port = wanted ?? await freePort();
        server = spawn(process.execPath, [
            ...program, '--bind-addr', `127.0.0.1:${port}`, '--auth', 'none', '--disable-telemetry', '--disable-update-check', '--disable-workspace-trust',
            '--disable-getting-started-override', '--disable-proxy',
        ], { env, stdio: 'ignore' });
        await answers(server, `http://127.0.0.1:${port}/healthz`, 180);
        return { folder, port, stop };
    } catch (error) {
        await stop();
        throw error;
    }
}

export function browserPath() {
    const onPath = (process.env.PATH ?? '').split(delimiter).flatMap(folder => ['chromium', 'chromium-browser', 'google-chrome'].map(name => join(folder, name)));
    const found = [process.env.CHROMIUM, ...onPath].find(path => path && existsSync(path));
    if (!found) throw new Error('No Chromium found: install it (apt-get install chromium) or name it in the environment variable CHROMIUM.');
    return found;
}

/** For a browser that asks nothing of any other machine. */
export const browserArguments = [
    '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync',
    '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
];

export function within(seconds, what, promise) {
    let timer;
    const late = new Promise((_, reject) => { timer = setTimeout(() => reject(new Error(`${what} did not end within ${seconds} s`)), seconds * 1000); });
    return Promise.race([promise, late]).finally(() => clearTimeout(timer));
}

function freePort() {
    return new Promise((resolve, reject) => {
        const server = createServer().once('error', reject).listen(0, '127.0.0.1', () => {
            const { port } = server.address();
            server.close(() => resolve(port));
        });
    });
}

async function answers(server, url, seconds) {
    const end = Date.now() + seconds * 1000;
    for (;;) {
        const response = await fetch(url).catch(() => undefined);
        if (response?.ok) return;
        if (Date.now() > end || server.exitCode !== null) throw new Error('the editor did not start');
        await new Promise(resolve => setTimeout(resolve, 100));
    }
}

async function end(server) {
    if (server.exitCode !== null || server.signalCode !== null) return;
    const gone = new Promise(resolve => server.once('exit', resolve));
    server.kill('SIGTERM');
    await within(5, 'the editor', gone).catch(() => server.kill('SIGKILL'));
}
