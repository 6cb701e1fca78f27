// Asks the tests about one mutant after the other, in one process that stays: vitest's own runner, called again and again. (Runs in vitest.)
// Between two runs of a file of tests only those modules are evaluated anew that lead to the room with the faults in it, so that nothing one
// mutant has made is met by the next. What each test reaches is found once, without a fault; then only those that reach a mutant are asked,
// the quickest first, and the first that fails ends it. With --again, what survives that is asked once more with all tests of the files that
// reach it: a test may look at what another one had made.
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { startTests } from '@vitest/runner';
import { TestRunner } from 'vitest';

const plan = JSON.parse(readFileSync(process.env.MUTANTS, 'utf8'));
const switches = globalThis.__stryker__ ??= {};

export default class extends TestRunner {
    /** Called before the first file of tests; all of the work is done here, and whoever has started it ends the process. */
    async onBeforeCollect() {
        const known = existsSync(plan.reach) ? linesOf(plan.reach) : [];
        const reaches = [];
        for (const file of plan.tests) {
            let reach = known.find(each => each.file === file);
            if (!reach) {
                tell({ start: 'dry', file, limit: 300_000 });
                reach = await dry(this, file);
                appendFileSync(plan.reach, `${JSON.stringify(reach)}\n`);
            }
            if (reach.failed.length > 0) tell({ failed: reach.failed, file });
            else reaches.push(reach);
        }
        for (const id of plan.mutants) await ask(this, id, reaches);
        tell({ end: true });
        await new Promise(() => {});
    }
}

/** What each test reaches, and how long it takes. What fails the second time would fail with any fault. */
async function dry(runner, file) {
    const first = await dryOnce(runner, file);
    return first.failed.length > 0 ? first : { ...first, failed: (await dryOnce(runner, file)).failed };
}

async function dryOnce(runner, file) {
    switches.activeMutant = undefined;
    switches.hitCount = undefined;
    switches.mutantCoverage = { static: {}, perTest: {} };
    const begun = performance.now(), { names, failed, times } = await runOne(runner, file);
    return { file, ms: Math.round(performance.now() - begun), names, failed, times, ...switches.mutantCoverage };
}

async function ask(runner, id, reaches) {
    const begun = performance.now();
    const found = reaches.map(reach => {
        const tests = reach.static[id] ? reach.names : reach.names.filter(name => reach.perTest[name]?.[id]);
        const hits = [reach.static, ...Object.values(reach.perTest)].reduce((sum, counts) => sum + (counts[id] ?? 0), 0);
        return { ...reach, tests, hits, cost: tests.reduce((sum, name) => sum + (reach.times[name] ?? 0), 0) };
    }).filter(({ tests }) => tests.length > 0).sort((a, b) => a.cost - b.cost);
    const end = (status, by) => tell({ id, status, by, ms: Math.round(performance.now() - begun) });
    if (found.length === 0) return end('NoCoverage');
    for (const chosen of plan.whole ? [true, false] : [true]) {
        for (const { file, ms, names, tests, hits } of found) {
            if (!chosen && tests.length === names.length) continue;
            tell({ start: id, file, limit: 20_000 + 8 * ms });
            Object.assign(switches, { activeMutant: id, hitCount: 0, hitLimit: 10_000 + 100 * hits });
            const { failed } = await runOne(runner, file, chosen ? new Set(tests) : undefined);
            if (failed.length > 0) return end(switches.hitCount > switches.hitLimit ? 'Timeout' : 'Killed', `${file.split('/tests/')[1]}: ${failed[0]}`);
        }
    }
    end('Survived');
}

/** Runs one file of tests anew: all of it, or the tests that are named, to the first that fails. */
async function runOne(outer, file, chosen) {
    reset(outer, file);
    const names = [], failed = [], times = {};
    const nothing = async () => {};
    const inner = Object.assign(Object.create(outer), {
        cancelRun: false, onBeforeCollect: nothing, onTaskUpdate: nothing, onCollectStart: task => void (outer.workerState.current = task), onAfterRunFiles: () => outer.snapshotClient.clear(),
        importFile(path, source) {
            const [module] = [...outer.workerState.evaluatedModules.getModulesByFile(path) ?? []];
            if (source !== 'setup' && module) outer.workerState.evaluatedModules.invalidateModule(module);
            return source === 'setup' && module?.evaluated ? undefined : outer.moduleRunner.import(path);
        },
        onCollected([{ tasks, result }]) {
            if (result?.state === 'fail') failed.push('(as it is gathered)');
            const tests = testsIn(tasks);
            names.push(...tests.map(nameOf));
            const all = chosen && [...chosen].every(name => names.includes(name)) ? chosen : undefined;
            for (const test of tests) if (all && !all.has(nameOf(test)) && test.mode === 'run') test.mode = 'skip';
            skipEmpty(tasks);
        },
        onBeforeRunTask(test) {
            switches.currentTestId = nameOf(test);
            return TestRunner.prototype.onBeforeRunTask.call(inner, test);
        },
        onAfterRunTask(test) {
            switches.currentTestId = undefined;
            times[nameOf(test)] = Math.round(test.result?.duration ?? 0);
            if (test.result?.state === 'fail') {
                failed.push(nameOf(test));
                // a run without a fault tells of all that fails
                if (switches.activeMutant !== undefined) inner.cancelRun = true;
            }
            return TestRunner.prototype.onAfterRunTask.call(inner, test);
        },
    });
    outer.workerState.filepath = file;
    switches.currentTestId = undefined;
    const files = await startTests([{ filepath: file, testLocations: undefined }], inner);
    for (const task of files) if (failed.length === 0 && hasFailed(task)) failed.push(task.result?.errors?.[0]?.message ?? '(the file)');
    return { names, failed, times };
}

function hasFailed(task) {
    return task.result?.state === 'fail' || (task.tasks ?? []).some(hasFailed);
}

function testsIn(tasks) {
    return tasks.flatMap(task => (task.type === 'suite' ? testsIn(task.tasks) : [task]));
}

/** What goes before a group of tests need not be done where none of them is asked. */
function skipEmpty(tasks) {
    for (const task of tasks) {
        if (task.type !== 'suite') continue;
        skipEmpty(task.tasks);
        if (task.mode === 'run' && task.tasks.length > 0 && task.tasks.every(({ mode }) => mode !== 'run')) task.mode = 'skip';
    }
}

function nameOf(task) {
    return task.suite && task.suite !== task.file ? `${nameOf(task.suite)} > ${task.name}` : task.name;
}

/** Forgets what leads to the room, and the tests. Setup files change other modules: where one is forgotten, all are. */
function reset({ workerState: { evaluatedModules, config } }, file) {
    const modules = [...evaluatedModules.idToModuleMap.values()].filter(module => !/\/node_modules\/|^node:|mutants\/ask/.test(module.id));
    const stale = new Map();
    const isStale = module => {
        if (stale.has(module)) return stale.get(module);
        stale.set(module, false);
        const is = module.file in plan.sources || module.file === file || [...module.imports].some(id => {
            const next = evaluatedModules.getModuleById(id);
            return next !== undefined && isStale(next);
        });
        stale.set(module, is);
        return is;
    };
    modules.forEach(isStale);
    // within a circle one may have been answered before its turn
    for (let more = true; more;) {
        more = false;
        for (const module of modules) {
            if (stale.get(module) || ![...module.imports].some(id => stale.get(evaluatedModules.getModuleById(id)))) continue;
            stale.set(module, true);
            more = true;
        }
    }
    const all = modules.some(module => config.setupFiles.includes(module.file) && stale.get(module));
    for (const module of modules) {
        if (!all && !stale.get(module)) continue;
        module.promise = undefined;
        module.exports = undefined;
        module.evaluated = false;
        module.importers.clear();
    }
}

function tell(line) {
    appendFileSync(plan.told, `${JSON.stringify(line)}\n`);
}

function linesOf(path) {
    return readFileSync(path, 'utf8').trim().split('\n').filter(Boolean).map(line => JSON.parse(line));
}
