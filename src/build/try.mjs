// npm run try: the extension in a real editor, for somebody who has none at hand. Serves the editor on this machine alone,
// with a copy of the examples to play with, a room open, its plan beside it and the walkthrough behind; Ctrl+C ends it and removes the copy.
// --port N serves on that port.
import { spawnSync } from 'node:child_process';
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { serveEditor } from './editor-server.mjs';
import { packageExtension } from './package.mjs';
import { main, root, run } from './ready.mjs';

/** What the editor's own parts are built with and what it searches with: the command, and the package of Debian that has it. */
const TOOLS = { python3: 'python3', make: 'make', 'g++': 'g++', rg: 'ripgrep' };

await main(async () => {
    const { values: { port } } = parseArgs({ options: { port: { type: 'string' } } });
    if (port !== undefined && !(Number(port) > 0)) throw new Error(`${port} is no port.`);
    const missing = Object.keys(TOOLS).filter(tool => spawnSync(tool, ['--version']).error);
    if (missing.length > 0) {
        const packages = missing.map(tool => TOOLS[tool]).join(' ');
        throw new Error(`The editor builds parts of itself and needs ${missing.join(', ')}. On Debian or Ubuntu: sudo apt-get install ${packages}`);
    }
    const editor = join(root, '.cache/editor');
    console.log('Getting an editor ready; the first time takes some minutes …');
    run('bash', [join(root, 'src/build/install-editor.sh'), editor], { quiet: true });
    const { path: vsix } = await packageExtension();
    const served = await serveEditor({ editor, vsix, settings: { 'cofferwright.atStart': 'tour' }, ...port && { port: Number(port) } });
    try {
        const examples = join(served.folder, 'examples');
        cpSync(join(root, 'examples'), examples, { recursive: true, filter: path => !path.endsWith('pictures') });
        const host = `127.0.0.1:${served.port}`, room = `vscode-remote://${host}${join(examples, 'quince-lane/dining-room.coffer')}`;
        const payload = encodeURIComponent(JSON.stringify([['openFile', room]]));
        console.log(`\nOpen http://${host}/?folder=${encodeURIComponent(examples)}&payload=${payload}`);
        console.log('It is a copy of the examples: change what you like. Ctrl+C ends it.');
        await new Promise(resolve => { for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, resolve); });
    } finally {
        await served.stop();
    }
});
