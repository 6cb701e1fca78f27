// The three programs, each in one file: command line, language server, extension.
import { chmod, cp, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { build } from 'esbuild';
import { licensesOf } from './licenses.mjs';
import { root } from './ready.mjs';

/** Files that are no code and travel inside it. tests/vitest.config.ts does the same for tests; src/assets.d.ts types them. */
export const loaders = { '.coffer': 'text', '.woff2': 'base64', '.md': 'text' };

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

/**
 * Bundles everything into `outdir`, with the licenses of what is bundled beside it.
 * @param {{ outdir?: string, minify?: boolean, sourcemap?: boolean }} options
 */
export async function bundle({ outdir = join(root, 'dist'), minify = false, sourcemap = true } = {}) {
    const common = { ...forNode, minify, sourcemap: sourcemap ? 'linked' : false };
    // an editor's extension host loads CommonJS; the packages' ES builds, taken first, leave out what is not used
    const cjs = { ...common, format: 'cjs', mainFields: ['module', 'main'] };
    const built = await Promise.all([
        build({
            ...common, format: 'esm', entryPoints: ['src/cli/main.ts'], outfile: join(outdir, 'cli/main.js'),
            banner: { js: `#!/usr/bin/env node\n${requireInEsm}` },
        }),
        build({ ...cjs, entryPoints: ['src/server/main.ts'], outfile: join(outdir, 'server/main.cjs') }),
        build({ ...cjs, external: ['vscode'], entryPoints: ['src/extension/main.ts'], outfile: join(outdir, 'extension/main.cjs') }),
    ]);
    await chmod(join(outdir, 'cli/main.js'), 0o755);
    // the shape of what the command line prints as JSON, for whoever reads it
    await cp(join(root, 'src/report/schema'), join(outdir, 'schema'), { recursive: true });
    await writeFile(join(outdir, 'licenses.txt'), await licensesOf(built.flatMap(result => Object.keys(result.metafile.inputs))));
}
