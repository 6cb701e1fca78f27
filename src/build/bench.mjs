// npm run bench: bundles every tests/bench/*.bench.ts and runs it by itself, one after the other, so that none warms up
// the next. A benchmark prints its own figures; tests/bench/README.md records the reached ones and how to compare.
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { forNode, requireInEsm } from './bundle.mjs';
import { main, root, run } from './ready.mjs';

await main(async () => {
    const folder = join(root, 'tests/bench');
    const wanted = process.argv.slice(2);
    const names = (existsSync(folder) ? readdirSync(folder) : []).filter(name => name.endsWith('.bench.ts'))
        .filter(name => wanted.length === 0 || wanted.some(word => name.includes(word))).sort();
    if (names.length === 0) throw new Error(`no benchmark in tests/bench${wanted.length ? ` is named like ${wanted.join(' or ')}` : ''}`);
    for (const name of names) {
        const outfile = join(root, '.cache/bench', name.replace(/\.ts$/, '.mjs'));
        await build({ ...forNode, format: 'esm', entryPoints: [join(folder, name)], outfile, banner: { js: requireInEsm } });
        console.log(`\n${name}`);
        // the figures of a program that collects its garbage at will swing; --expose-gc lets a benchmark collect between runs
        run(process.execPath, ['--expose-gc', outfile]);
    }
});
