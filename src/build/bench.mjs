// npm run bench [-- NAME …] [--record]: measures, and shows beside each figure the one that was recorded.
// A benchmark is a file tests/bench/NAME.bench.ts whose default export is an async function that returns figures by
// name: { 'keystroke to findings, median, ms': 3.1 }; it may hand the figures it has so far to its parameter on the way, which then are there
// if it breaks later. It may print what it likes besides. Recorded figures stand in
// tests/bench/recorded.json with the machine they were taken on; a difference is shown and never fails, because another
// machine is no mistake.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { build } from 'esbuild';
import { forNode, requireInEsm } from './bundle.mjs';
import { main, root, run } from './ready.mjs';

const folder = join(root, 'tests/bench');
const built = join(root, '.cache/bench');
const recordFile = join(folder, 'recorded.json');

await main(async () => {
    const { values: { record }, positionals } = parseArgs({ allowPositionals: true, options: { record: { type: 'boolean', default: false } } });
    const names = (existsSync(folder) ? readdirSync(folder) : []).filter(name => name.endsWith('.bench.ts')).map(name => name.slice(0, -'.bench.ts'.length))
        .filter(name => positionals.length === 0 || positionals.includes(name)).sort();
    if (names.length === 0) throw new Error(`There is no benchmark ${positionals.join(' or ')} in tests/bench.`);
    const recorded = existsSync(recordFile) ? JSON.parse(readFileSync(recordFile, 'utf8')) : { machine: '', figures: {} };
    run(process.execPath, ['src/build/build.mjs'], { quiet: true }); // what is measured from outside must be what the source says
    if (recorded.machine) console.log(`Recorded on ${recorded.machine}`);

    const failed = [];
    for (const name of names) {
        console.log(`\n${name}`);
        // what this machine has not, or what broke, costs its own figures and no others: a benchmark hands over what it has as it goes
        const { figures, broke } = await measure(name).catch(error => ({ figures: {}, broke: error }));
        if (broke) {
            console.log(`  not measured to the end: ${broke.message}`);
            failed.push(name);
        }
        for (const [what, value] of Object.entries(figures)) console.log(line(what, value, recorded.figures[name]?.[what]));
        // a figure that was left out keeps the one that is recorded
        recorded.figures[name] = { ...recorded.figures[name], ...figures };
        if (record) keep(recorded);
    }
    if (failed.length > 0) throw new Error(`Not measured: ${failed.join(', ')}.`);
});

/** Figures are written as they come, so that an end before the last benchmark loses none. */
function keep(recorded) {
    recorded.machine = `${cpus()[0]?.model ?? 'an unknown processor'}, ${cpus().length} cores, Node ${process.versions.node}`;
    writeFileSync(recordFile, `${JSON.stringify(recorded, undefined, 2)}\n`);
}

/** Each benchmark runs in a process of its own, so that none warms up the next. `gc` is there to collect between runs. */
async function measure(name) {
    const outfile = join(built, `${name}.mjs`);
    const results = join(built, `${name}.json`);
    mkdirSync(built, { recursive: true });
    await build({
        ...forNode, external: ['playwright-core'], format: 'esm', outfile, banner: { js: requireInEsm },
        stdin: {
            resolveDir: folder, loader: 'ts',
            contents: `import { writeFileSync } from 'node:fs'; import measure from './${name}.bench.ts'; const keep = figures => writeFileSync(${JSON.stringify(results)}, JSON.stringify(figures)); keep(await measure(keep));`,
        },
    });
    rmSync(results, { force: true });
    let broke;
    try {
        run(process.execPath, ['--expose-gc', outfile]);
    } catch (error) {
        broke = error;
    }
    const figures = existsSync(results) ? JSON.parse(readFileSync(results, 'utf8')) : {};
    return { figures, broke };
}

function line(what, value, before) {
    const figure = Number(value).toPrecision(3);
    if (before === undefined) return `  ${what}: ${figure} (not recorded)`;
    return `  ${what}: ${figure} (recorded ${Number(before).toPrecision(3)}, ${(value / before).toFixed(2)} times)`;
}
