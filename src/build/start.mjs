// npm start: from a fresh clone to the pieces of a ceiling. Installs, builds, and does the whole job on an example with
// the command line as it is shipped. Everything it makes goes to out/.
import { spawn } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join, relative } from 'node:path';
import { main, ready, root, run } from './ready.mjs';

const example = 'examples/quince-lane';
const out = join(root, 'out');

/** What is printed goes into a file; what makes files itself says which. */
const jobs = [
    { save: 'findings.txt', args: ['check'] },
    { save: 'findings.json', args: ['check', '--format', 'json'] },
    { save: 'cut-list.txt', args: ['cut-list'] },
    { save: 'cut-list.csv', args: ['cut-list', '--format', 'csv'] },
    { save: 'dry-fit.txt', args: ['dry-fit'] },
    { save: 'boards.txt', args: ['boards'] },
    { save: 'boards.csv', args: ['boards', '--format', 'csv'] },
    { save: 'saw.txt', args: ['saw'] },
    { save: 'order.txt', args: ['order'] },
    { save: 'estimate.txt', args: ['estimate'] },
    { args: ['bid', '--out', join(out, 'bids')] },
    { args: ['invoice', '--number', '3', '--out', join(out, 'invoices')] },
    { args: ['draw', '--out', join(out, 'drawings')] },
];

await main(async () => {
    ready({ onlyToBuild: true });
    run(process.execPath, ['src/build/build.mjs']);
    rmSync(out, { recursive: true, force: true });
    mkdirSync(out, { recursive: true });

    // the looks for the cheapest boards take most of the time, so as many commands run as there are cores
    const printed = new Map();
    const waiting = [...jobs];
    await Promise.all(Array.from({ length: availableParallelism() }, async () => {
        for (let job = waiting.shift(); job; job = waiting.shift()) printed.set(job, await cofferwright(...job.args, example));
    }));

    heading(`What is wrong in ${example}`);
    process.stdout.write(printed.get(jobs[0]));
    // of each house what is to be bought; how to cut it stands in out/boards.txt
    const boards = printed.get(jobs.find(({ save }) => save === 'boards.txt'));
    for (const [bought] of boards.matchAll(/^BOARDS TO BUY.*?(?=\n\n)/gms)) console.log(`\n${bought}`);

    heading('Written');
    for (const job of jobs) for (const file of written(job, printed.get(job))) console.log(`  ${file}`);
});

/** Runs the built command line as a carpenter would; gives what it prints. Findings (exit code 1) are no failure here. */
async function cofferwright(...args) {
    const child = spawn(process.execPath, [join(root, 'dist/cli/main.js'), ...args], { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
    const [stdout, stderr, status] = await Promise.all([text(child.stdout), text(child.stderr), new Promise((done, fail) => child.once('error', fail).once('close', done))]);
    if (status !== 0 && status !== 1) throw new Error(`cofferwright ${args.join(' ')} ended with exit code ${status}\n${stderr}`);
    return stdout || stderr;
}

async function text(stream) {
    const parts = [];
    for await (const part of stream) parts.push(part);
    return Buffer.concat(parts).toString('utf8');
}

/** The files of a job as they are seen from here. */
function written({ save }, printed) {
    if (save === undefined) return printed.trim().split('\n').map(path => relative(root, path));
    writeFileSync(join(out, save), printed);
    return [relative(root, join(out, save))];
}

function heading(text) {
    console.log(`\n${text}`);
}
