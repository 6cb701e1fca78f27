// npm run test:editor: packages the extension, installs the package in a real editor and runs tests/editor/suite in it.
// --results FILE keeps the results as JSON, --pictures FOLDER the pictures the suite takes (default: out/pictures).
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { build } from 'esbuild';
import { forNode } from './bundle.mjs';
import { runInEditor } from './editor-host.mjs';
import { packageExtension } from './package.mjs';
import { isEntry, main, root, run } from './ready.mjs';

export const workspace = join(root, 'tests/editor/workspace');

/** Bundles the suite, which runs as a CommonJS module in the editor's extension host. Returns its path. */
export async function bundleSuite() {
    const outfile = join(root, '.cache/editor-suite/suite.cjs');
    await build({ ...forNode, format: 'cjs', external: ['vscode'], entryPoints: ['tests/editor/suite/index.ts'], outfile });
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

if (isEntry(import.meta.url)) await main(async () => {
    const { values } = parseArgs({ options: { results: { type: 'string', default: '.cache/editor-suite/results.json' }, pictures: { type: 'string', default: 'out/pictures' } } });
    const results = resolve(root, values.results);
    const pictures = resolve(root, values.pictures);
    const editor = join(root, '.cache/editor');
    run('bash', [join(root, 'src/build/install-editor.sh'), editor], { quiet: true });
    const { path: vsix } = await packageExtension();
    const suite = await bundleSuite();
    rmSync(results, { force: true });
    mkdirSync(pictures, { recursive: true });
    const code = await runInEditor({ editor, vsix, suite, workspace, results, pictures, seconds: 110, log: console.log });
    judge(results);
    if (code !== 0) throw new Error(`The editor ended with ${code}.`);
});
