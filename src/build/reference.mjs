// npm run reference: writes the language reference, the rule reference, the colors and the schemas of what is printed as JSON anew. They are
// committed, so that they can be read where the code is read; a test fails while one of them is stale.
import { join } from 'node:path';
import { build } from 'esbuild';
import { forNode, requireInEsm } from './bundle.mjs';
import { main, root, run } from './ready.mjs';

await main(async () => {
    const outfile = join(root, '.cache/reference.mjs');
    await build({ ...forNode, format: 'esm', entryPoints: [join(root, 'src/build/write-references.ts')], outfile, external: ['ts-json-schema-generator'], banner: { js: requireInEsm } });
    run(process.execPath, [outfile]);
});
