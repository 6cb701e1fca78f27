// Makes a clone ready for work: installs the dependencies, generates the parser and the table of letters, each only where it is out of date.
// Runs before anything is installed, so it uses Node alone.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

/** What is generated, each in a folder of its own with a hash over all that it depends on. */
const PARSER = { folder: 'src/language/generated', main: 'grammar.ts', from: ['src/language/coffer.langium', 'langium-config.json', 'node_modules/langium-cli/package.json'] };
const LETTERS = {
    folder: 'src/drawing/generated', main: 'font-metrics.ts',
    from: ['src/build/font-metrics.mjs', 'node_modules/@fontsource/barlow-semi-condensed/package.json', 'node_modules/fontkit/package.json'],
};

/**
 * Installs and generates what is missing or stale. Throws where a step fails.
 * @param {{ onlyToBuild?: boolean }} options `onlyToBuild`: leaves out what only tests, checks and the package for editors
 *     need, which is most of it; what is there already stays
 */
export function ready({ onlyToBuild = false } = {}) {
    const major = Number(process.versions.node.split('.')[0]);
    if (major < 20) throw new Error(`Node 20 or newer is needed; this is ${process.version}.`);
    if (!installed(onlyToBuild)) {
        console.log('Installing dependencies …');
        // `dev` is asked for by name: with NODE_ENV=production npm would leave it out
        npm(['ci', onlyToBuild ? '--omit=dev' : '--include=dev', '--no-audit', '--no-fund', '--loglevel=error']);
    }
    if (!isFresh(PARSER)) {
        console.log('Generating the parser …');
        generate(PARSER, [join(root, 'node_modules/langium-cli/bin/langium.js'), 'generate', '--file', 'langium-config.json']);
    }
    if (!isFresh(LETTERS)) generate(LETTERS, [join(root, 'src/build/font-metrics.mjs')]);
}

/**
 * What npm says it has installed (node_modules/.package-lock.json) against what the lock file asks for. Compared by
 * content: a stamp or a file time would be wrong after a change of branch or an install by hand.
 */
function installed(onlyToBuild) {
    const has = readJson(join(root, 'node_modules/.package-lock.json'))?.packages;
    const wants = readJson(join(root, 'package-lock.json'))?.packages;
    if (!has || !wants) return false;
    return Object.entries(wants).every(([path, wanted]) =>
        path === '' || (onlyToBuild && wanted.dev) || (has[path] ? has[path].version === wanted.version : wanted.optional === true));
}

function isFresh({ folder, main, from }) {
    const stamp = join(root, folder, '.made-from');
    return existsSync(join(root, folder, main)) && existsSync(stamp) && readFileSync(stamp, 'utf8') === hashOf(from);
}

function generate({ folder, from }, args) {
    rmSync(join(root, folder, '.made-from'), { force: true });      // langium-cli asks what to do with a file it does not know, and writes nothing
    mkdirSync(join(root, folder), { recursive: true });
    run(process.execPath, args, { quiet: true });
    writeFileSync(join(root, folder, '.made-from'), hashOf(from));
}

function hashOf(files) {
    const hash = createHash('sha256');
    for (const file of files) hash.update(file).update(readFileSync(join(root, file)));
    return hash.digest('hex');
}

function readJson(path) {
    return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : undefined;
}

/** Runs npm; under `npm run` by the very npm that called, which spares a shell on Windows. */
export function npm(args, options = {}) {
    const script = process.env.npm_execpath;
    if (script?.endsWith('.js')) run(process.execPath, [script, ...args], options);
    else run('npm', args, { ...options, shell: process.platform === 'win32' });
}

/** Runs a program in the repository and throws where it fails; `quiet` shows its output only then. */
export function run(program, args, { quiet = false, ...options } = {}) {
    const result = spawnSync(program, args, { cwd: root, stdio: quiet ? 'pipe' : 'inherit', encoding: 'utf8', ...options });
    if (result.status === 0) return;
    if (quiet) process.stderr.write(`${result.stdout ?? ''}${result.stderr ?? ''}`);
    throw new Error(`${[program, ...args].join(' ')} failed${result.error ? `: ${result.error.message}` : ` with exit code ${result.status}`}`);
}

/** Ends the calling script with a one-line message instead of a stack trace. */
export async function main(job) {
    try {
        await job();
    } catch (error) {
        console.error(error instanceof Error ? error.message : error);
        process.exit(1);
    }
}

export function isEntry(url) {
    return process.argv[1] !== undefined && resolve(process.argv[1]) === fileURLToPath(url);
}

if (isEntry(import.meta.url)) await main(ready);
