// npm run build: bundles the command line, the server and the extension into dist/.
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { bundle } from './bundle.mjs';
import { main, root } from './ready.mjs';

await main(async () => {
    await Promise.all(['cli', 'server', 'extension'].map(part => rm(join(root, 'dist', part), { recursive: true, force: true })));
    await bundle();
    console.log('Built dist/cli/main.js, dist/server/main.cjs, dist/extension/main.cjs');
});
