// npm run try: the extension in a real editor, for somebody who has none at hand. Serves the editor on this machine alone,
// with a copy of the examples to play with; Ctrl+C ends it and removes the copy. --port N serves on that port.
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { serveEditor } from './editor-server.mjs';
import { packageExtension } from './package.mjs';
import { main, root, run } from './ready.mjs';

await main(async () => {
    const { values: { port } } = parseArgs({ options: { port: { type: 'string' } } });
    if (port !== undefined && !(Number(port) > 0)) throw new Error(`${port} is no port.`);
    const editor = join(root, '.cache/editor');
    console.log('Getting an editor ready; the first time takes some minutes …');
    run('bash', [join(root, 'src/build/install-editor.sh'), editor], { quiet: true });
    const { path: vsix } = await packageExtension();
    const served = await serveEditor({ editor, vsix, ...port && { port: Number(port) } });
    try {
        const examples = join(served.folder, 'examples');
        cpSync(join(root, 'examples'), examples, { recursive: true, filter: path => !path.endsWith('pictures') });
        console.log(`\nOpen http://127.0.0.1:${served.port}/?folder=${encodeURIComponent(examples)}`);
        console.log('It is a copy of the examples: change what you like. Ctrl+C ends it.');
        await new Promise(resolve => { for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, resolve); });
    } finally {
        await served.stop();
    }
});
