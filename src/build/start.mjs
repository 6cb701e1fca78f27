// npm start: from a fresh clone to the pieces of a ceiling. Installs, builds, and does the whole job on an example.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { main, ready, root, run } from './ready.mjs';

const example = 'examples/quince-lane';
const out = join(root, 'out');

await main(() => {
    ready();
    run(process.execPath, ['src/build/build.mjs']);
    rmSync(out, { recursive: true, force: true });
    mkdirSync(out, { recursive: true });

    say(`Checking ${example}`);
    cofferwright(['check', example], { findingsAreFine: true });
    write('findings.json', cofferwright(['check', '--format', 'json', example], { findingsAreFine: true, keep: true }));
});

/** Runs the built command line as a carpenter would, shows what it prints, or returns it where `keep`. */
function cofferwright(args, { keep = false, findingsAreFine = false } = {}) {
    const result = spawnSync(process.execPath, [join(root, 'dist/cli/main.js'), ...args], {
        cwd: root, encoding: 'utf8', maxBuffer: 64_000_000, stdio: ['ignore', keep ? 'pipe' : 'inherit', 'inherit'],
    });
    const fine = result.status === 0 || (findingsAreFine && result.status === 1);
    if (!fine) throw new Error(`cofferwright ${args.join(' ')} ended with exit code ${result.status}`);
    return result.stdout;
}

function write(name, text) {
    writeFileSync(join(out, name), text);
}

function say(text) {
    console.log(`\n${text}`);
}
void readFileSync;
