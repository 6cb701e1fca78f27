// The programs, each in one file: command line, and for Node and for the browser language server and extension.
import { chmod, cp, writeFile } from 'node:fs/promises';
import { readdirSync, existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import { build } from 'esbuild';
import { licensesOf } from './licenses.mjs';
import { root } from './ready.mjs';

/** Files that are no code and travel inside it. tests/vitest.config.ts does the same for tests; src/assets.d.ts types them. */
export const loaders = { '.coffer': 'text', '.woff2': 'base64', '.woff': 'base64', '.md': 'text' };

/**
 * Bundled CommonJS packages ask for Node's own modules by `require`, which an ES module has not got.
 * The name is long so that it clashes with nothing.
 */
export const requireInEsm = "import { createRequire as cofferwrightCreateRequire } from 'node:module'; const require = cofferwrightCreateRequire(import.meta.url);";

/** Settings of everything that is bundled for Node, the tests' programs too. */
export const forNode = {
    absWorkingDir: root, bundle: true, platform: 'node', target: 'node20', loader: loaders, charset: 'utf8',
    logLevel: 'warning', legalComments: 'none', metafile: true,
};

/** An editor's extension host loads CommonJS; the packages' ES builds, taken first, leave out what is not used. */
const cjs = { ...forNode, format: 'cjs', mainFields: ['module', 'main'] };

/** The same for a browser's workers. */
const forBrowser = { ...forNode, platform: 'browser', target: 'es2022' };

/** The library for glTF can also read and write files on a disk, which it asks for when somebody does; in a browser nobody does. */
const withoutDisk = {
    name: 'without-disk',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /^node:(fs|path)$/ }, ({ importer }) => (importer.includes('@gltf-transform') ? { path: 'disk', namespace: 'without' } : undefined));
        onLoad({ filter: /.*/, namespace: 'without' }, () => ({ contents: 'export {};' }));
    },
};

/** Every kind of pane that has a script, `src/panes/KIND/main.ts`, becomes `panes/KIND.js`; the drawings' letters lie beside them. */
export function paneKinds() {
    const folder = join(root, 'src/panes');
    return readdirSync(folder).filter(name => existsSync(join(folder, name, 'main.ts'))).sort();
}

/** Bundles the panes' scripts and letters into `outdir`. */
export function bundlePanes({ outdir, minify, sourcemap }) {
    const common = { ...forBrowser, minify, sourcemap };
    return Promise.all([
        build({ ...common, format: 'iife', entryPoints: Object.fromEntries(paneKinds().map(kind => [kind, `src/panes/${kind}/main.ts`])), outdir }),
        build({ ...common, sourcemap: false, loader: { '.woff2': 'file' }, assetNames: '[name]', entryPoints: { fonts: 'src/panes/fonts.css' }, outdir }),
    ]);
}

/**
 * The command line starts the language server that lies beside it, and carries no second one. What writes PDF is as long as all the rest,
 * and is read by the one command that needs it.
 */
const beside = {
    name: 'beside',
    setup({ onResolve }) {
        onResolve({ filter: /\/server\/main\.ts$/ }, () => ({ path: '../server/main.cjs', external: true }));
        onResolve({ filter: /\/exports\/pdf\/bid\.ts$/ }, ({ kind }) => (kind === 'entry-point' ? undefined : { path: './bid-pdf.js', external: true }));
    },
};

/**
 * The command line: what is called, the command in a thread of its own, and what lies beside them but the language server: what writes PDF, and the solver of the boards in a thread of its own,
 * which the server's thread shares.
 */
export async function bundleCommandLine(outdir, options = {}) {
    const esm = { ...forNode, ...options, format: 'esm' };
    const built = await Promise.all([
        build({ ...esm, entryPoints: ['src/cli/main.ts'], outfile: join(outdir, 'main.js'), banner: { js: '#!/usr/bin/env node' }, plugins: [beside] }),
        build({ ...esm, entryPoints: ['src/cli/command.ts'], outfile: join(outdir, 'command.js'), banner: { js: requireInEsm }, plugins: [beside] }),
        ...[['src/exports/pdf/bid.ts', 'bid-pdf.js'], ['src/worker/boards-worker.ts', 'boards-worker.js']]
            .map(([from, to]) => build({ ...esm, entryPoints: [from], outfile: join(outdir, to), banner: { js: requireInEsm } })),
    ]);
    await chmod(join(outdir, 'main.js'), 0o755);
    await writeFile(join(outdir, 'package.json'), '{ "type": "module" }\n'); // whatever the package around it says
    await cp(join(root, 'node_modules/highs/build/highs.wasm'), join(outdir, 'highs.wasm'));
    return built;
}

/** The language server for Node, which the command line starts too. */
function bundleServer(outdir, options = {}) {
    return build({ ...cjs, ...options, entryPoints: ['src/server/main.ts'], outfile: join(outdir, 'server/main.cjs') });
}

/** The command line and what lies beside it, and no extension for an editor. */
export async function bundleToCall(outdir, options = {}) {
    await Promise.all([bundleCommandLine(join(outdir, 'cli'), options), bundleServer(outdir, options)]);
}

/**
 * Bundles everything into `outdir`, with the licenses of what is bundled beside it.
 * @param {{ outdir?: string, minify?: boolean, sourcemap?: boolean }} options
 * @returns {Promise<Record<string, number>>} the programs' sizes in bytes, by path in `outdir`
 */
export async function bundle({ outdir = join(root, 'dist'), minify = false, sourcemap = true } = {}) {
    const common = { minify, sourcemap: sourcemap ? 'linked' : false };
    const built = await Promise.all([
        bundleCommandLine(join(outdir, 'cli'), common),
        bundleServer(outdir, common),
        build({ ...cjs, ...common, external: ['vscode'], entryPoints: ['src/extension/main.ts'], outfile: join(outdir, 'extension/main.cjs') }),
        build({ ...forBrowser, ...common, plugins: [withoutDisk], format: 'iife', entryPoints: ['src/server/browser.ts'], outfile: join(outdir, 'server/browser.js') }),
        build({ ...forBrowser, ...common, format: 'cjs', external: ['vscode'], entryPoints: ['src/extension/browser.ts'], outfile: join(outdir, 'extension/browser.js') }),
        bundlePanes({ outdir: join(outdir, 'panes'), ...common }),
    ]).then(all => all.flat());
    // the shape of what the command line prints as JSON, for whoever reads it
    await cp(join(root, 'src/report/schema'), join(outdir, 'schema'), { recursive: true });
    await writeFile(join(outdir, 'licenses.txt'), await licensesOf(built.flatMap(result => Object.keys(result.metafile.inputs))));
    const outputs = built.flatMap(result => Object.entries(result.metafile.outputs)).filter(([path]) => !path.endsWith('.map'));
    return Object.fromEntries(outputs.map(([path, { bytes }]) => [relative(outdir, join(root, path)), bytes]));
}
