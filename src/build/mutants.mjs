// npm run mutants [-- ROOM …] [--every N] [--again] [--wide]: makes small faults in the source of a room (a `<` for a `<=`, a `+` for a `-`, a condition
// that always holds), one at a time, and runs the tests of that room over each. A fault that no test sees shows a test that is missing.
// --every N looks at every N-th line only, always the same ones: all lines of a large room take hours.
// --again looks at what survived last time, and counts the rest as it was; --wide asks slow tests, and those of other rooms, too: first
// without, then both together for what survived.
// Results stand in .cache/mutants/ROOM.json; what survived is printed with its place.
// The tool is installed when it is asked for: 208 packages that nobody else needs.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { main, npm, root, run } from './ready.mjs';

const folder = join(root, '.cache/mutants');
const tool = '@stryker-mutator/core@9.6.1', runner = '@stryker-mutator/vitest-runner@9.6.1';

/** Rooms of `src`, and the tests that are to see their faults: quick ones, and all that are asked with `--wide`. */
const ROOMS = {
    quantity: [['tests/quantity']],
    ceiling: [['tests/ceiling', ...inTakeoff('parts', 'example', 'sections', 'kinds-of-beams')], ['tests/takeoff', 'tests/rules']],
    takeoff: [inTakeoff('parts', 'example', 'sections', 'kinds-of-beams', 'half-beams', 'consumables'), ['tests/takeoff', 'tests/dryfit']],
    cutting: [['as-cut', 'first-plan', 'known', 'pose', 'proved-plan', 'rest', 'sections'].map(name => `tests/cutting/${name}.test.ts`), ['tests/cutting/solve']],
    sawing: [['tests/sawing']],
    estimate: [['tests/estimate']],
    rules: [['tests/rules']],
    plane: [['tests/plane'], ['tests/arrangement']],
    arrangement: [['tests/arrangement']],
};
function inTakeoff(...names) {
    return names.map(name => `tests/takeoff/${name}.test.ts`);
}

await main(() => {
    const { values: { every, again, wide }, positionals } = parseArgs({
        allowPositionals: true, options: { every: { type: 'string', default: '1' }, again: { type: 'boolean' }, wide: { type: 'boolean' } },
    });
    const step = Math.max(1, Math.round(Number(every) || 1));
    const unknown = positionals.find(room => !(room in ROOMS));
    if (unknown) throw new Error(`There is no room ${unknown}; there are ${Object.keys(ROOMS).join(', ')}.`);
    install();
    const lines = [];
    for (const room of positionals.length > 0 ? positionals : Object.keys(ROOMS)) lines.push(look(room, { step, again, wide }));
    console.log(`\n${lines.join('\n')}`);
});

function install() {
    if (existsSync(join(folder, 'node_modules/@stryker-mutator/vitest-runner'))) return;
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'package.json'), '{"private":true}\n');
    npm(['install', '--prefix', folder, '--no-save', '--no-audit', '--no-fund', '--loglevel=error', '--ignore-scripts', tool, runner]);
}

/** Looks at one room; returns its line of the summary. */
function look(room, { step, again, wide }) {
    const report = join(folder, `${room}.json`), config = join(folder, `${room}.config.json`), [quick, slow = []] = ROOMS[room];
    const before = again ? JSON.parse(readFileSync(report, 'utf8')) : undefined;
    const places = before ? mutantsOf(before).filter(isOpen).map(rangeOf) : filesOf(join('src', room)).flatMap(file => everyLine(file, step));
    if (places.length > 0) {
        writeFileSync(config, JSON.stringify({
            mutate: [...new Set(places)],
            // a word is no fault that a test should see letter by letter: texts are held by the expected findings and snapshots
            mutator: { excludedMutations: ['StringLiteral'] },
            testRunner: 'vitest', plugins: [join(folder, 'node_modules/@stryker-mutator/vitest-runner/dist/src/index.js')],
            vitest: { configFile: 'tests/vitest.config.ts', related: false },
            coverageAnalysis: 'perTest', ignoreStatic: true, concurrency: 1, timeoutMS: 60_000, timeoutFactor: 4, dryRunTimeoutMinutes: 30, disableTypeChecks: false,
            ignorePatterns: ['out', 'dist', '.cache', '/.vscode-test'], tempDirName: '.cache/mutants/work', allowConsoleColors: false,
            reporters: ['json', 'progress-append-only'], jsonReporter: { fileName: report }, fileLogLevel: 'off', logLevel: 'warn',
        }, undefined, 1));
        const tests = wide ? [...quick, ...slow] : quick;
        run(process.execPath, [join(folder, 'node_modules/@stryker-mutator/core/bin/stryker.js'), 'run', config], { env: { ...process.env, MUTANTS: tests.join(',') } });
    }
    const found = JSON.parse(readFileSync(report, 'utf8'));
    if (before) keepKilled(before, found);
    writeFileSync(report, JSON.stringify({ ...found, step: before?.step ?? step }));
    return summary(room, found, before?.step ?? step);
}

function mutantsOf({ files }) {
    return Object.entries(files).flatMap(([file, { mutants, source }]) => mutants.map(mutant => ({ ...mutant, file, source: source.split('\n')[mutant.location.start.line - 1].trim() })));
}

function isOpen({ status }) {
    return status === 'Survived' || status === 'NoCoverage';
}

function rangeOf({ file, location: { start, end } }) {
    return `${file}:${start.line}:${start.column - 1}-${end.line}:${end.column - 1}`;
}

/** What was not looked at again is as it was: killed, or left out. Of a place that was looked at again all is new. */
function keepKilled(before, found) {
    for (const [file, { mutants, ...rest }] of Object.entries(before.files)) {
        const again = found.files[file] ??= { ...rest, mutants: [] };
        const seen = new Set(again.mutants.map(sameness));
        again.mutants.push(...mutants.filter(mutant => !isOpen(mutant) && !seen.has(sameness(mutant))));
    }
}

function sameness({ location, mutatorName, replacement }) {
    return JSON.stringify([location, mutatorName, replacement]);
}

function summary(room, report, step) {
    const all = mutantsOf(report);
    const count = (...states) => all.filter(({ status }) => states.includes(status)).length;
    const killed = count('Killed', 'Timeout'), survived = count('Survived', 'NoCoverage');
    for (const { status, file, location, replacement, mutatorName, source } of all.filter(isOpen)) {
        console.log(`${file}:${location.start.line}:${location.start.column} ${status}: ${mutatorName} ${replacement.replace(/\s+/g, ' ').slice(0, 80)}\n    ${source}`);
    }
    const share = killed + survived > 0 ? `${(100 * killed / (killed + survived)).toFixed(1)} % killed` : 'nothing to kill';
    return `${room}: ${share} (${killed} of ${killed + survived}${step > 1 ? `, every ${step}th line` : ''}; ${count('Ignored')} not looked at, ${count('CompileError', 'RuntimeError')} did not run)`;
}

function filesOf(path) {
    return readdirSync(join(root, path), { withFileTypes: true, recursive: true }).filter(entry => entry.isFile() && entry.name.endsWith('.ts'))
        .map(entry => join(entry.parentPath ?? entry.path, entry.name).slice(root.length + 1)).sort();
}

/** The file whole, or ranges of single lines: every `step`-th, beginning at one that depends on the file's name. */
function everyLine(file, step) {
    if (step === 1) return [file];
    const count = readFileSync(join(root, file), 'utf8').split('\n').length, first = [...file].reduce((sum, letter) => sum + letter.codePointAt(0), 0) % step;
    return Array.from({ length: Math.ceil((count - first) / step) }, (_, i) => first + i * step + 1).filter(line => line <= count).map(line => `${file}:${line}:0-${line}:400`);
}
