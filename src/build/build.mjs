// npm run build: bundles the command line, the servers and the extensions into dist/.
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { bundle } from './bundle.mjs';
import { main, root } from './ready.mjs';

await main(async () => {
    await Promise.all(['cli', 'server', 'extension', 'panes'].map(part => rm(join(root, 'dist', part), { recursive: true, force: true })));
    const sizes = await bundle();
    console.log(`Built ${Object.keys(sizes).map(path => `dist/${path}`).join(', ')}`);
});
