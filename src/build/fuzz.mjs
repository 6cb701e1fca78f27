// npm run fuzz [-- COUNT SEED SESSIONS THREADS CEILINGS]: so many mutilated texts through everything, one in fifty of them a whole file, and so many sessions with the
// server, one for a thousand texts unless it is said, in one thread unless more are. Says how many there were, what was found and how long the worst
// took; and so many random ceilings, one for twenty texts unless it is said, from their text to the dry fit; what fails is kept in .cache/fuzz. Ends with 1 where anything failed.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { forNode, requireInEsm } from './bundle.mjs';
import { main, root, run } from './ready.mjs';

await main(async () => {
    const [count = 2000, seed = 1, sessions = Math.floor(count / 1000), threads = 1, ceilings = Math.floor(count / 20)] = process.argv.slice(2).map(Number);
    if (![count, seed, sessions, threads - 1, ceilings].every(each => Number.isSafeInteger(each) && each >= 0)) throw new Error('npm run fuzz -- COUNT SEED SESSIONS THREADS CEILINGS: whole numbers');
    const outfile = join(root, '.cache/fuzz/fuzz.mjs');
    mkdirSync(join(root, '.cache/fuzz'), { recursive: true });
    await build({
        ...forNode, format: 'esm', outfile, banner: { js: requireInEsm }, sourcemap: 'inline',
        stdin: { resolveDir: join(root, 'tests/fuzz'), loader: 'ts', contents: `import { inThreads } from './threads.ts';\nawait inThreads(${JSON.stringify({ root, count, seed, sessions, threads, ceilings })});` },
    });
    // most of what is thrown here is thrown by the parser and caught by it, which needs no trace; young objects die in the first collection
    run(process.execPath, ['--stack-trace-limit=0', '--max-semi-space-size=64', outfile]);
});
