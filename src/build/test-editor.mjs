// npm run test:editor: packages the extension, installs the package in a real editor and runs tests/editor/suite in it: in the
// extension host on Node, and in the one in the browser.
// --results FILE keeps the results as JSON, --pictures FOLDER the pictures the suite takes (default: out/pictures),
// --only node or --only web runs in one of the two.
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { build } from 'esbuild';
import { forNode } from './bundle.mjs';
import { runInEditor } from './editor-host.mjs';
import { packageExtension } from './package.mjs';
import { testKeys } from './test-keys.mjs';
import { testReload } from './test-reload.mjs';
import { isEntry, main, root, run } from './ready.mjs';

export const workspace = join(root, 'tests/editor/workspace');
const suites = join(root, 'tests/editor/suite');

/** Bundles the suite, which runs as a CommonJS module in the editor's extension host. Returns its path. */
export async function bundleSuite() {
    const outfile = join(root, '.cache/editor-suite/suite.cjs');
    await build({ ...forNode, format: 'cjs', external: ['vscode'], entryPoints: ['tests/editor/suite/index.ts'], outfile });
    return outfile;
}

/** The same for a browser, where the few things that the suite takes from Node come from elsewhere. */
async function bundleSuiteForBrowser() {
    const outfile = join(root, '.cache/editor-suite/suite-web.cjs');
    const instead = {
        name: 'instead-of-node',
        setup({ onResolve }) {
            onResolve({ filter: /^node:assert\/strict$/ }, () => ({ path: join(suites, 'assert-web.ts') }));
            onResolve({ filter: /^\.\/outside\.ts$/ }, () => ({ path: join(suites, 'outside-web.ts') }));
        },
    };
    await build({ ...forNode, platform: 'browser', target: 'es2022', format: 'cjs', external: ['vscode'], plugins: [instead], entryPoints: ['tests/editor/suite/index-web.ts'], outfile });
    return outfile;
}

/** Prints the suite's results; throws where one failed or there are none. */
export function judge(results) {
    const { editor, results: tests } = JSON.parse(readFileSync(results, 'utf8'));
    const failed = tests.filter(test => !test.ok);
    for (const test of failed) console.error(`\n${test.name}\n${test.error}`);
    console.log(`${tests.length - failed.length} passed, ${failed.length} failed in ${editor}`);
    if (failed.length > 0 || tests.length === 0) throw new Error('The suite failed.');
}

/** Where extensions run: each host has the suite that fits it. */
const hosts = {
    node: { web: false, bundleFor: bundleSuite, says: 'on Node' },
    web: { web: true, bundleFor: bundleSuiteForBrowser, says: 'in the browser' },
};

if (isEntry(import.meta.url)) await main(async () => {
    const { values } = parseArgs({ options: { results: { type: 'string', default: '.cache/editor-suite/results.json' }, pictures: { type: 'string', default: 'out/pictures' }, only: { type: 'string' } } });
    const results = resolve(root, values.results);
    const pictures = resolve(root, values.pictures);
    const editor = join(root, '.cache/editor');
    run('bash', [join(root, 'src/build/install-editor.sh'), editor], { quiet: true });
    const { path: vsix } = await packageExtension();
    rmSync(results, { force: true });
    mkdirSync(pictures, { recursive: true });
    const all = [];
    for (const [name, { web, bundleFor, says }] of Object.entries(hosts).filter(([name]) => !values.only || values.only === name)) {
        console.log(`\nExtension host ${says}`);
        const began = Date.now(), one = join(root, `.cache/editor-suite/results-${name}.json`);
        rmSync(one, { force: true });
        const code = await runInEditor({
            editor, vsix, suite: await bundleFor(), web, packed: join(root, '.cache/package'), workspace, results: one, pictures, seconds: 600, log: console.log,
        });
        const { editor: which, results: tests } = JSON.parse(readFileSync(one, 'utf8'));
        all.push(...tests.map(test => ({ ...test, name: `${says}: ${test.name}` })));
        writeFileSync(results, JSON.stringify({ editor: which, results: all }, undefined, 1));
        console.log(`${Math.round((Date.now() - began) / 1000)} s`);
        if (code !== 0 && tests.every(test => test.ok)) throw new Error(`The editor ended with ${code}.`);
    }
    if (values.only !== 'web') {
        const { editor: which } = JSON.parse(readFileSync(results, 'utf8'));
        for (const test of [testReload, testKeys]) all.push(await test({ editor, vsix, workspace, pictures }));
        writeFileSync(results, JSON.stringify({ editor: which, results: all }, undefined, 1));
    }
    judge(results);
});
