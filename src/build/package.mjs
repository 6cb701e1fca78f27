// npm run package: the installable extension, dist/cofferwright-VERSION.vsix. Needs no network.
import { cp, mkdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createVSIX } from '@vscode/vsce';
import { bundle } from './bundle.mjs';
import { isEntry, main, root } from './ready.mjs';

/** An extension people install over a building site's connection should stay small. A third of it is the solver of the boards; 105 kB are
 * the walkthrough's pictures. */
const MOST_BYTES = 5_150_000;
/** The editor loads one of the extensions whenever a job file is opened, and starts one of the servers. Without sources' maps, in bytes. */
const MOST_BYTES_OF = {
    'extension/main.cjs': 500_000, 'extension/browser.js': 500_000, 'server/main.cjs': 2_480_000, 'server/browser.js': 2_440_000, 'cli/main.js': 40_000, 'cli/command.js': 2_600_000,
    'cli/bid-pdf.js': 1_400_000, 'cli/boards-worker.js': 300_000,
};

/** A pane's script is loaded whenever that pane is opened; the one that draws in three dimensions brings what draws it. */
const MOST_BYTES_OF_PANE = 140_000, MOST_BYTES_OF_VIEW = 900_000, MOST_BYTES_OF_LETTERS = 30_000;

function mostBytesOf(program) {
    if (program === 'panes/view.js') return MOST_BYTES_OF_VIEW;
    if (/^panes\/.*\.js$/.test(program)) return MOST_BYTES_OF_PANE;
    return program.startsWith('panes/') ? MOST_BYTES_OF_LETTERS : MOST_BYTES_OF[program];
}

/**
 * Packages from a folder that holds exactly what is shipped, so that nothing can slip in by a missing line in an
 * ignore file. The manifest's strings live beside the extension's code and belong, in the package, beside the manifest.
 * @returns {Promise<{ path: string, bytes: number, sizes: Record<string, number> }>} `sizes`: of the programs in it, by path
 */
export async function packageExtension() {
    const folder = join(root, '.cache/package');
    await rm(folder, { recursive: true, force: true });
    await mkdir(folder, { recursive: true });
    const sizes = await bundle({ outdir: join(folder, 'dist'), minify: true, sourcemap: false });
    for (const [program, size] of Object.entries(sizes)) {
        const most = mostBytesOf(program);
        if (most === undefined || size > most) throw new Error(`${program} has ${size} bytes; ${most ?? 0} is the most.`);
    }
    await writeFile(join(folder, 'README.md'), withoutOwnPictures(await readFile(join(root, 'README.md'), 'utf8')));
    for (const name of ['LICENSE', 'CHANGELOG.md', 'syntaxes']) await cp(join(root, name), join(folder, name), { recursive: true });
    await cp(join(root, 'src/extension/package.nls.json'), join(folder, 'package.nls.json'));
    await cp(join(root, 'src/extension/l10n'), join(folder, 'l10n'), { recursive: true });

    // without `type`: a browser's extension host loads no ES modules, and takes every file for one where a package says so
    const { scripts, dependencies, devDependencies, private: isPrivate, type, ...manifest } = JSON.parse(await readFile(join(root, 'package.json'), 'utf8'));
    const shipped = { ...manifest, files: ['dist', 'syntaxes', 'l10n', 'package.nls.json', 'README.md', 'CHANGELOG.md', 'LICENSE'] };
    await writeFile(join(folder, 'package.json'), `${JSON.stringify(shipped, undefined, 2)}\n`);

    const path = join(root, `dist/${manifest.name}-${manifest.version}.vsix`);
    await mkdir(join(root, 'dist'), { recursive: true });
    await createVSIX({ cwd: folder, packagePath: path, dependencies: false, allowMissingRepository: true, rewriteRelativeLinks: false });
    const bytes = (await stat(path)).size;
    if (bytes > MOST_BYTES) throw new Error(`${path} has ${bytes} bytes; ${MOST_BYTES} is the most.`);
    return { path, bytes, sizes };
}

/** The page of an extension shows pictures from the web only; those beside the README would be broken on it. */
function withoutOwnPictures(markdown) {
    return markdown.replace(/^!\[[^\]]*\]\((?!https:)[^)]*\)\n*/gm, '');
}

if (isEntry(import.meta.url)) await main(async () => {
    const { path, bytes, sizes } = await packageExtension();
    for (const [program, size] of Object.entries(sizes)) console.log(`  ${program}: ${Math.round(size / 1000)} kB of at most ${mostBytesOf(program) / 1000} kB`);
    console.log(`${path}: ${Math.round(bytes / 1000)} kB of at most ${MOST_BYTES / 1000} kB`);
});
