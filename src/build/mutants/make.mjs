// Makes the small faults of a room: which there are, which of them are looked at, and the source with all of those in it, each behind a
// switch that one global value turns on. So nothing is loaded or compiled anew from fault to fault.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { npm, root } from '../ready.mjs';

const folder = join(root, '.cache/mutants');
const tool = '@stryker-mutator/instrumenter@9.6.1', place = join(folder, 'node_modules/@stryker-mutator/instrumenter/dist/src');

/** The tool is installed when it is asked for: some eighty packages that nobody else needs. */
export function install() {
    if (existsSync(place)) return;
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'package.json'), '{"private":true}\n');
    npm(['install', '--prefix', folder, '--no-save', '--no-audit', '--no-fund', '--loglevel=error', '--ignore-scripts', tool]);
}

/**
 * @param {string} path a folder of the source
 * @param {(mutant: object) => boolean} isLookedAt
 * @returns {Promise<{ sources: Record<string, string>, mutants: object[], left: number }>} the source of each file by its absolute path, the
 *     mutants that are in it, and how many there are besides
 */
export async function makeMutants(path, isLookedAt) {
    const [{ Instrumenter }, { createParser }, { print }, { transform }] = await Promise.all(
        ['instrumenter.js', 'parsers/index.js', 'printers/index.js', 'transformers/index.js'].map(name => import(join(place, name))));
    const quiet = { debug() {}, info() {}, warn() {}, isDebugEnabled: () => false };
    const files = filesOf(path).map(name => ({ name, mutate: true, content: readFileSync(name, 'utf8') }));
    const texts = new Map(files.map(({ name, content }) => [name, content]));
    const mutants = [], alike = new Map();
    let left = 0;
    // a fault is chosen before it is put in: what is not looked at costs no time either
    const choose = (tree, collector, context) => {
        const collect = collector.collect.bind(collector);
        collector.collect = (file, original, mutable, offset) => {
            const mutant = collect(file, original, mutable, offset);
            if (mutant.ignoreReason) return mutant;
            const text = texts.get(file), { start, end } = original.loc, name = file.slice(root.length + 1);
            const words = `${name} ${mutant.mutatorName} ${text.slice(original.start, original.end)} ${mutant.replacementCode}`;
            const nth = alike.get(words) ?? 0;
            alike.set(words, nth + 1);
            const told = {
                id: mutant.id, key: createHash('sha256').update(`${words} ${nth}`).digest('hex').slice(0, 12), file: name, line: start.line, column: start.column + 1,
                endLine: end.line, mutator: mutant.mutatorName, replacement: mutant.replacementCode.replace(/\s+/g, ' '), source: text.split('\n')[start.line - 1].trim(),
                original: text.slice(original.start, original.end).replace(/\s+/g, ' '),
            };
            if (isLookedAt(told)) mutants.push(told);
            else {
                mutant.ignoreReason = 'not in the sample';
                left++;
            }
            return mutant;
        };
        transform(tree, collector, context);
        collector.collect = collect;
    };
    // a word is no fault that a test should see letter by letter: texts are held by the expected findings and snapshots
    const options = { ignorers: [], excludedMutations: ['StringLiteral'], plugins: [], noHeader: false };
    const made = await new Instrumenter(quiet, createParser, print, choose).instrument(files, options);
    return { sources: Object.fromEntries(made.files.map(({ name, content }) => [name, content])), mutants, left };
}

function filesOf(path) {
    return readdirSync(join(root, path), { withFileTypes: true, recursive: true }).filter(entry => entry.isFile() && entry.name.endsWith('.ts'))
        .map(entry => join(entry.parentPath ?? entry.path, entry.name)).sort();
}
