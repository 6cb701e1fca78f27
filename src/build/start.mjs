// npm start: from a fresh clone to the pieces of a ceiling. Installs, builds, and does the whole job on an example with
// the command line as it is shipped. Everything it makes goes to out/.
import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { main, ready, root, run } from './ready.mjs';

const example = 'examples/quince-lane';
const out = join(root, 'out');

await main(() => {
    ready();
    run(process.execPath, ['src/build/build.mjs']);
    rmSync(out, { recursive: true, force: true });
    mkdirSync(out, { recursive: true });

    heading(`What is wrong in ${example}`);
    const checked = cofferwright('check', example);
    process.stdout.write(checked);

    const files = [
        save('findings.json', cofferwright('check', '--format', 'json', example)),
        save('cut-list.txt', cofferwright('cut-list', example)),
        save('cut-list.csv', cofferwright('cut-list', '--format', 'csv', example)),
        save('boards.txt', cofferwright('boards', example)),
        save('boards.csv', cofferwright('boards', '--format', 'csv', example)),
    ];
    files.push(
        save('dry-fit.txt', cofferwright('dry-fit', example)),
        save('saw.txt', cofferwright('saw', example)),
        save('order.txt', cofferwright('order', example)),
        save('estimate.txt', cofferwright('estimate', example)),
        save('estimate.csv', cofferwright('estimate', '--format', 'csv', example)),
    );
    for (const format of ['pdf', 'html']) files.push(...paths(cofferwright('bid', '--format', format, '--out', join(out, 'bids'), example)));
    const drawn = cofferwright('draw', '--out', join(out, 'drawings'), example);
    files.push(...paths(drawn));

    // of each house what is to be bought; how to cut it stands in out/boards.txt
    for (const [bought] of cofferwright('boards', example).matchAll(/^BOARDS TO BUY.*?(?=\n\n)/gms)) console.log(`\n${bought}`);
    heading('Written');
    for (const file of files) console.log(`  ${file}`);
});

/** Runs the built command line as a carpenter would; returns what it prints. Findings (exit code 1) are no failure here. */
function cofferwright(...args) {
    const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, 'dist/cli/main.js'), ...args], { cwd: root, encoding: 'utf8', maxBuffer: 64_000_000 });
    if (status !== 0 && status !== 1) throw new Error(`cofferwright ${args.join(' ')} ended with exit code ${status}\n${stderr}`);
    return stdout || stderr;
}

/** Paths that a command printed, as they are seen from here. */
function paths(printed) {
    return printed.trim().split('\n').map(path => relative(root, path));
}

function save(name, text) {
    writeFileSync(join(out, name), text);
    return relative(root, join(out, name));
}

function heading(text) {
    console.log(`\n${text}`);
}
