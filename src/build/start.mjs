// npm start: from a fresh clone to the pieces of a ceiling. Installs, builds the command line, and does the
// whole job on an example with it. Everything it makes goes to out/.
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { main, ready, root } from './ready.mjs';

const example = 'examples/quince-lane';
const out = join(root, 'out');

/** What is printed goes into a file; what makes files itself says which. */
const jobs = [
    { save: 'findings.txt', args: ['check'] },
    { save: 'findings.json', args: ['check', '--format', 'json'] },
    { save: 'cut-list.txt', args: ['cut-list'] },
    { save: 'cut-list.csv', args: ['cut-list', '--format', 'csv'] },
    { save: 'dry-fit.txt', args: ['dry-fit'] },
    { save: 'measure.txt', args: ['measure'] },
    { save: 'survey.txt', args: ['survey'] },
    { save: 'walls.txt', args: ['walls'] },
    { save: 'joists.txt', args: ['joists'] },
    { save: 'trades.txt', args: ['trades'] },
    { save: 'seasons.txt', args: ['seasons'] },
    { save: 'boards.txt', args: ['boards'] },
    { save: 'boards.csv', args: ['boards', '--format', 'csv'] },
    { save: 'saw.txt', args: ['saw'] },
    { save: 'order.txt', args: ['order'] },
    { save: 'estimate.txt', args: ['estimate'] },
    { args: ['bid', '--out', join(out, 'bids')] },
    { args: ['invoice', '--number', '3', '--out', join(out, 'invoices')] },
    { args: ['draw', '--out', join(out, 'drawings')] },
    { args: ['survey', '--templates', join(out, 'templates')] },
    { args: ['walls', '--templates', join(out, 'templates')] },
];

/** So many of them read what the others read too. */
const FIRST = 3;

await main(async () => {
    ready({ onlyToBuild: true });
    // installed only now
    const { bundleToCall, forNode, requireInEsm } = await import('./bundle.mjs'), { build } = await import('esbuild');
    const together = join(root, '.cache/start/jobs.mjs');
    [out, ...['cli', 'server'].map(part => join(root, 'dist', part))].forEach(folder => rmSync(folder, { recursive: true, force: true }));
    mkdirSync(out, { recursive: true });
    await Promise.all([
        bundleToCall(join(root, 'dist'), { sourcemap: 'linked' }),
        build({ ...forNode, format: 'esm', entryPoints: ['src/build/start-jobs.ts'], outfile: together, banner: { js: requireInEsm } }),
    ]);
    console.log('Built dist/cli, dist/server');

    // the looks for the cheapest boards take most of the time: each is done once
    const { printedBy } = await import(pathToFileURL(together));
    const printed = await printedBy(jobs.map(({ args }) => [...args, example]), { cwd: root, boards: join(root, 'dist/cli/boards-worker.js'), first: FIRST });

    heading(`What is wrong in ${example}`);
    process.stdout.write(printed[0]);
    // of each house what is to be bought; how to cut it stands in out/boards.txt
    const boards = printed[jobs.findIndex(({ save }) => save === 'boards.txt')];
    for (const [bought] of boards.matchAll(/^BOARDS TO BUY.*?(?=\n\n)/gms)) console.log(`\n${bought}`);

    heading('Written');
    jobs.forEach((job, i) => { for (const file of written(job, printed[i])) console.log(`  ${file}`); });
});

/** The files of a job as they are seen from here. */
function written({ save }, printed) {
    if (save === undefined) return printed.trim().split('\n').map(path => relative(root, path));
    writeFileSync(join(out, save), printed);
    return [relative(root, join(out, save))];
}

function heading(text) {
    console.log(`\n${text}`);
}
