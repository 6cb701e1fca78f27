// npm run mutants [-- ROOM …] [--every N] [--from K] [--again] [--wide]: makes small faults in the source of a room (a `<` for a `<=`, a `+` for
// a `-`, a condition that always holds, a block left out), one at a time, and asks the tests of that room about each. A fault that no test
// sees shows a test that is missing.
// --every N looks at one fault in N, --from K (0 to N - 1) says at which: chosen by a hash of what the fault is, so by chance, always the same
// ones, whatever else in the file changes, and none of one K is in another. What is mended for one K is measured by another.
// --wide asks slow tests, and those of other rooms, too.
// A run that was broken off is taken up where it was, as long as no source and no test has changed.
// --again looks at what survived last time, and counts the rest as it was, whatever has changed.
// Results stand in .cache/mutants/ROOM.json; what survived is printed with its place.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, openSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { parseArgs } from 'node:util';
import { install, makeMutants } from './mutants/make.mjs';
import { main, root } from './ready.mjs';

const folder = join(root, '.cache/mutants');

/** Tests of what is read by people: every number of a job goes through one of them. */
const READERS = ['tests/pipeline', 'tests/standing', 'tests/report', 'tests/drawing', 'tests/pages', 'tests/exports'];

/** Rooms of `src`, and the tests that are to see their faults: quick ones, and all that are asked with `--wide`. */
const ROOMS = {
    quantity: [['tests/quantity'], ['tests/language/elaborate', 'tests/provenance', 'tests/report']],
    ceiling: [
        [
            'tests/ceiling',
            ...inTakeoff(
                'parts', 'sections', 'kinds-of-beams', 'whole-lists', 'faces-in-line', 'holding', 'panels', 'wall-splices', 'unlike-flanks', 'timbers', 'askew', 'moldings',
                'l-out-of-square', 'turned-bays', 'dies-under-sides', 'half-beams', 'side-splices',
            ),
            ...inRules('real-jobs', 'slips', 'limits'), 'tests/pipeline/as-before.test.ts',
        ],
        ['tests/ceiling', 'tests/takeoff', 'tests/arrangement', 'tests/rules', 'tests/dryfit', ...READERS],
    ],
    takeoff: [
        [...inTakeoff(
            'parts', 'example', 'sections', 'kinds-of-beams', 'half-beams', 'consumables', 'names-and-ends', 'spacer-starts', 'weight', 'work-words', 'whole-lists', 'rows', 'pooled', 'worked', 'worked-variants',
            'holding', 'moldings', 'panels', 'timbers', 'turned-bays', 'askew', 'unlike-flanks', 'dies-under-sides', 'wall-splices', 'side-splices', 'short-strips', 'molding-at-corner', 'piece-tables',
        ), ...inClosing('bending', 'least', 'said', 'ways'), 'tests/cutting/as-cut.test.ts'],
        ['tests/takeoff', 'tests/dryfit', 'tests/rules', 'tests/cutting', ...READERS],
    ],
    cutting: [
        [...inCutting(
            'as-cut', 'ask-together', 'assign', 'at-bench', 'become', 'first-plan', 'gap', 'known', 'look-closer', 'money-and-boards', 'pose', 'proved-plan', 'rest', 'sections', 'shop',
            'still-good', 'strips-on-hand', 'whole-plans', 'solve/at-once', 'solve/branches', 'solve/course', 'solve/dive', 'solve/offcuts', 'solve/parts', 'solve/programs', 'solve/scarce', 'solve/too-much',
            'solve/enough', 'solve/exhaustive', 'solve/whole-model', 'solve/second-solver',
        ), 'tests/sawing/miter-stop.test.ts'],
        ['tests/cutting', 'tests/sawing', 'tests/estimate', ...READERS],
    ],
    sawing: [['tests/sawing'], READERS],
    estimate: [['tests/estimate'], READERS],
    rules: [['tests/rules'], ['tests/ceiling', 'tests/dryfit', ...READERS]],
    plane: [['tests/plane'], ['tests/arrangement']],
    arrangement: [['tests/arrangement']],
};
function inTakeoff(...names) {
    return names.map(name => `tests/takeoff/${name}.test.ts`);
}
function inRules(...names) {
    return names.map(name => `tests/rules/${name}.test.ts`);
}
function inClosing(...names) {
    return names.map(name => `tests/putup/closing/${name}.test.ts`);
}
function inCutting(...names) {
    return names.map(name => `tests/cutting/${name}.test.ts`);
}

await main(async () => {
    const { values: { every, from, again, wide }, positionals } = parseArgs({
        allowPositionals: true,
        options: { every: { type: 'string', default: '1' }, from: { type: 'string', default: '0' }, again: { type: 'boolean' }, wide: { type: 'boolean' } },
    });
    const step = Math.max(1, Math.round(Number(every) || 1)), first = Math.round(Number(from) || 0);
    const unknown = positionals.find(room => !(room in ROOMS));
    if (unknown) throw new Error(`There is no room ${unknown}; there are ${Object.keys(ROOMS).join(', ')}.`);
    install();
    const lines = [];
    for (const room of positionals.length > 0 ? positionals : Object.keys(ROOMS)) lines.push(await look(room, { step, first, again, wide }));
    console.log(`\n${lines.join('\n')}`);
});

/** Looks at one room; returns its line of the summary. */
async function look(room, { step, first, again, wide }) {
    const report = join(folder, `${room}.json`), plan = join(folder, `${room}.plan.json`), told = join(folder, `${room}.told.jsonl`);
    const last = existsSync(report) ? JSON.parse(readFileSync(report, 'utf8')) : { mutants: [] };
    const sample = again && last.step ? { step: last.step, first: last.first } : { step, first };
    const { sources, mutants } = await makeMutants(join('src', room), ({ key }) => parseInt(key.slice(0, 8), 16) % sample.step === sample.first);
    const tests = [...new Set((wide ? ROOMS[room].flat() : ROOMS[room][0]).flatMap(testsIn))];
    const hash = hashOf([JSON.stringify([sources, tests]), ...filesIn('src'), ...filesIn('tests')]);
    // what a run that was broken off has found out holds as long as nothing has changed; --again takes what was killed then for killed now
    const isKnown = ({ status }) => again ? !isOpen(status) : last.hash === hash && status !== undefined;
    const known = new Map(last.mutants.filter(isKnown).map(mutant => [mutant.key, mutant]));
    const found = new Map(mutants.filter(({ key }) => known.has(key)).map(mutant => [mutant.id, { ...known.get(mutant.key), ...mutant }]));
    const write = () => writeFileSync(report, JSON.stringify({ ...sample, hash, mutants: mutants.map(mutant => found.get(mutant.id) ?? mutant) }, undefined, 1));
    const reach = join(folder, `${room}.reach.${hash}.jsonl`);
    writeFileSync(told, '');
    while (found.size < mutants.length) {
        writeFileSync(plan, JSON.stringify({ sources, tests, reach, told, whole: again === true, mutants: mutants.map(({ id }) => id).filter(id => !found.has(id)) }));
        await askTests({ plan, told, log: join(folder, `${room}.log`) }, ({ id, ...rest }) => {
            found.set(id, { ...mutants.find(mutant => mutant.id === id), ...rest });
            if (found.size % 25 === 0) console.log(`${room}: ${found.size} of ${mutants.length}`);
            write();
        });
    }
    write();
    return summary(room, JSON.parse(readFileSync(report, 'utf8')));
}

/** One process of tests, until it is through or hangs: what hangs is a fault that was seen, and the next process goes on after it. */
async function askTests({ plan, told, log }, found) {
    const begun = readFileSync(told, 'utf8').length;
    const child = spawn(process.execPath, ['--max-old-space-size=3000', 'node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/vitest.config.ts'], {
        cwd: root, env: { ...process.env, MUTANTS: plan, CI: 'true', NODE_OPTIONS: '--max-old-space-size=3000' }, stdio: ['ignore', openSync(log, 'w'), openSync(log, 'a')],
    });
    let ended = false;
    child.on('exit', () => ended = true);
    const worked = clockOf(child.pid);
    for (let read = begun, active, since = worked(); ;) {
        await pause(200);
        const text = readFileSync(told, 'utf8'), whole = text.lastIndexOf('\n') + 1;
        for (const line of text.slice(read, whole).split('\n').filter(Boolean).map(each => JSON.parse(each))) {
            since = worked();
            if (line.id !== undefined) {
                found(line);
                active = undefined;
            }
            if (line.start !== undefined) active = line;
            if (line.failed) console.log(`${line.file} is not asked: it fails without a fault (${line.failed.join('; ')}).`);
            if (line.end) {
                child.kill('SIGKILL');
                return;
            }
        }
        read = Math.max(read, whole);
        const hangs = active !== undefined && worked() - since > active.limit;
        if (!ended && !hangs) continue;
        child.kill('SIGKILL');
        if (active === undefined || active.start === 'dry') throw new Error(`The tests could not be run${active ? `: ${active.file}` : ''}. See ${log}.`);
        found({ id: active.start, status: 'Timeout', by: hangs ? 'hangs' : 'ends the process', ms: worked() - since });
        return;
    }
}

/**
 * How long a process has worked, in milliseconds: by the processor's time, where the system tells it (in hundredths of a second, after the name in
 * parentheses the 12th and 13th figure), so that nothing hangs only since the machine is busy; else by the clock.
 */
function clockOf(pid) {
    let last = 0;
    return () => {
        if (!existsSync('/proc/self/stat')) return Date.now();
        try {
            const figures = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ').at(-1).split(' ');
            last = 10 * (Number(figures[11]) + Number(figures[12]));
        } catch { /* it has ended: as long as it had worked when last looked at */ }
        return last;
    };
}

function isOpen(status) {
    return status === undefined || status === 'Survived' || status === 'NoCoverage';
}

function summary(room, { mutants, step, first }) {
    const open = mutants.filter(({ status }) => isOpen(status)), killed = mutants.length - open.length;
    for (const { status, key, file, line, column, original, replacement, mutator, source } of open) {
        console.log(`${key} ${file}:${line}:${column} ${status}: ${mutator}: ${original.slice(0, 80)}  =>  ${replacement.slice(0, 80)}\n    ${source}`);
    }
    const share = mutants.length > 0 ? `${(100 * killed / mutants.length).toFixed(1)} % killed` : 'nothing to kill';
    return `${room}: ${share} (${killed} of ${mutants.length}${step > 1 ? `, one in ${step} from ${first}` : ''})`;
}

function testsIn(path) {
    return path.endsWith('.ts') ? [join(root, path)] : filesIn(path).filter(file => file.endsWith('.test.ts'));
}

function filesIn(path) {
    return readdirSync(join(root, path), { withFileTypes: true, recursive: true }).filter(entry => entry.isFile())
        .map(entry => join(entry.parentPath ?? entry.path, entry.name)).sort();
}

/** Of texts as they are, and of files by what is in them. */
function hashOf(parts) {
    const hash = createHash('sha256');
    for (const part of parts) hash.update(part.length < 300 && existsSync(part) ? readFileSync(part) : part);
    return hash.digest('hex').slice(0, 12);
}
