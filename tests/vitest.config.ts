import { defineConfig } from 'vitest/config';
import { readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';

/** `.coffer` and font files are bundled as text and base64, by esbuild in the product and by this in tests. */
const assets = {
    name: 'coffer-assets',
    enforce: 'pre' as const,
    load(id: string): string | undefined {
        const file = id.split('?')[0]!;
        if (/\.(coffer|md)$/.test(file)) return `export default ${JSON.stringify(readFileSync(file, 'utf8'))}`;
        if (/\.woff2?$/.test(file)) return `export default ${JSON.stringify(readFileSync(file, 'base64'))}`;
        return undefined;
    },
};

const root = new URL('..', import.meta.url).pathname;
/** `npm run mutants` asks the tests about faults, one after the other in one process, and says where they are: sources with faults in them. */
interface Mutants { readonly tests: readonly string[]; readonly sources: Readonly<Record<string, string>> }
const mutants = process.env['MUTANTS'] === undefined ? undefined : JSON.parse(readFileSync(process.env['MUTANTS'], 'utf8')) as Mutants;
const faulty = { name: 'coffer-mutants', enforce: 'pre' as const, load: (id: string): string | undefined => mutants?.sources[id.split('?')[0]!] };
const all = ['tests/**/*.test.ts'];
const panes = ['tests/panes/**/*.test.ts'];
/** Measures the memory of the process it runs in. */
const alone = ['tests/server/soak.test.ts'];
/**
 * Whatever takes longest: half of the time of all. `.ci/run` takes it, and so does who sets CI or asks for files by name; everyday's run leaves
 * it out: it is to be over in three minutes. What is in it tries what is not (disks that fail, solvers, servers that are spoken to badly,
 * random grids), or looks at panes that others look at, too.
 */
const long = [
    'tests/server/stretches.test.ts',
    ...['boards', 'changes', 'cut-list', 'hostile', 'keys', 'looks', 'plan', 'put-up', 'view', 'view-changed'].map(pane => `tests/panes/${pane}.test.ts`),
    ...['built', 'failing-folder', 'most-files', 'rehearsal', 'renamed', 'special-files', 'writing'].map(name => `tests/cli/${name}.test.ts`),
    ...['branches', 'known-optima', 'second-solver', 'whole-model'].map(name => `tests/cutting/solve/${name}.test.ts`),
    ...['bare-client', 'calm/typed', 'calm/whole-job', 'changes/comparisons', 'features/grid-actions', 'hostile-messages', 'late/late', 'repository', 'unbroken', 'words'].map(name => `tests/server/${name}.test.ts`), ...alone,
    ...['compare', 'hostile', 'limits'].map(name => `tests/hostile/${name}.test.ts`), ...['crews', 'around', 'replay'].map(name => `tests/putup/${name}.test.ts`),
    'tests/dryfit/planted.test.ts', 'tests/dryfit/pooled.test.ts', 'tests/language/recovery/recovery.test.ts', 'tests/survey/plane.test.ts', 'tests/language/elaborate/huge.test.ts', 'tests/standing/one-plan.test.ts', 'tests/standing/properties.test.ts',
    'tests/suggest/random.test.ts', 'tests/suggest/suggestions.test.ts', 'tests/takeoff/random-ceilings.test.ts',
];
const isNamed = process.argv.some(word => word.startsWith('tests/') && word !== 'tests/vitest.config.ts');
const isEveryday = !process.env['CI'] && !process.env['FULL'] && mutants === undefined && !isNamed;
const left = isEveryday ? long : [];

/** One process more than there are cores: some wait for a browser or a server. Left alone, one core waits, which on two is half the machine. */
const maxWorkers = availableParallelism() + 1;
const setupFiles = ['tests/support/builtin-once.ts'];
/**
 * All cases of a long test at once take longer than a share of them. The longest of everyday's take ten to twenty seconds on a quiet machine, and
 * ten times that where others share it: a limit is there for what hangs, and tells nothing of what is slow.
 */
const TIME = process.env['FULL'] || mutants !== undefined ? 900_000 : 300_000;
/** Trees and pieces by the thousand live for a test: with more room for what is young, a tenth of the time is not spent on clearing away. */
const execArgv = ['--max-semi-space-size=128'];
/** Who waits for something to become so waits as long: a second is soon over where others have the processor. */
const expecting = { poll: { timeout: TIME / 2 } };
const common = { root, maxWorkers, execArgv, testTimeout: TIME, hookTimeout: TIME, expect: expecting, setupFiles };

/**
 * What a module becomes is kept by its path and its text: half of what a run with few changes takes to load. Faults come into a module past
 * its text, so they are never kept.
 */
const experimental = { fsModuleCache: true, fsModuleCachePath: `${root}.cache/vitest` };

export default defineConfig({
    plugins: [assets, faulty],
    // a thread takes no such flag, and ends with its process, which one that hangs has to
    test: mutants !== undefined
        ? { ...common, execArgv: [], include: mutants.tests.slice(0, 1), runner: 'src/build/mutants/ask.mjs', pool: 'threads', isolate: false, maxWorkers: 1 } : {
        ...common, experimental,
        projects: [
            // what is tested is pure: the files of a process share the modules, which load in seconds
            { extends: true, test: { name: 'parts', include: all, exclude: [...panes, ...alone, ...left], isolate: false } },
            { extends: true, test: { name: 'panes', include: panes, exclude: left, isolate: false, globalSetup: ['tests/panes/support/browser-for-all.ts'] } },
            { extends: true, test: { name: 'alone', include: alone, exclude: left } },
        ],
    },
});
