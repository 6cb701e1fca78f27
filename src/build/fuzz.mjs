// npm run fuzz [-- COUNT SEED SESSIONS]: so many mutilated texts through everything, and so many sessions with the server, one for a hundred texts unless it is said.
// Says how many there were, what was found and how long the worst took; what fails is kept in .cache/fuzz. Ends with 1 where anything failed.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { forNode, requireInEsm } from './bundle.mjs';
import { main, root, run } from './ready.mjs';

await main(async () => {
    const [count = 2000, seed = 1, sessions = Math.floor(count / 100)] = process.argv.slice(2).map(Number);
    if (![count, seed, sessions].every(each => Number.isSafeInteger(each) && each >= 0)) throw new Error('npm run fuzz -- COUNT SEED SESSIONS: whole numbers');
    const outfile = join(root, '.cache/fuzz/fuzz.mjs');
    mkdirSync(join(root, '.cache/fuzz'), { recursive: true });
    await build({
        ...forNode, format: 'esm', outfile, banner: { js: requireInEsm }, sourcemap: 'inline',
        stdin: {
            resolveDir: join(root, 'tests/fuzz'), loader: 'ts',
            contents: `import { fuzz } from './run.ts';
                const { worst, ...outcome } = await fuzz({ root: ${JSON.stringify(root)}, count: ${count}, seed: ${seed}, wantedSessions: ${sessions}, timed: true, say: words => console.log(words) });
                console.log(JSON.stringify(outcome));
                process.exit(outcome.failures > 0 ? 1 : 0);`,
        },
    });
    run(process.execPath, ['--enable-source-maps', outfile]);
});
