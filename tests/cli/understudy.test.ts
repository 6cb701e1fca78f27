import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { nodeFiles } from '../../src/cli/file-system.ts';
import { run } from '../../src/cli/program.ts';
import { rehearsal, type KnownAnswers, type Performance, type Understudy } from '../../src/cli/understudy.ts';
import type { Interrupts } from '../../src/cli/interrupts.ts';
import type { BoardProver } from '../../src/cutting/board-prover.ts';
import { some } from '../support/full.ts';
import { folderWith } from './folder.ts';
import { house, tooWide } from './house.ts';
import { proverHere } from './prover.ts';
import { cofferwright, type Ran } from './world.ts';

const COMMANDS = [
    ['boards'], ['boards', '--format', 'json'], ['order', '--format', 'csv'], ['saw'], ['saw', '--sheets', 'sheets'], ['labels'], ['estimate'], ['bid', '--format', 'html'], ['print', '--page', 'boards'],
    ['print', '--page', 'estimate'], ['order', '.', 'gone.coffer'],
];

/** A search that finds what there is to be found, says of nothing that it is the last, and tells when it is through. */
function endless(through: () => void): BoardProver {
    return {
        prove(asked, found) {
            let open = asked.length;
            return proverHere.prove(asked, (index, answer, isLast) => {
                found(index, answer, false);
                if (isLast && --open === 0) setImmediate(through);
            });
        },
    };
}

/** A search that finds nothing. */
function silent(begun: () => void): BoardProver {
    return { prove: () => { setImmediate(begun); return () => {}; } };
}

async function rehearsed(cwd: string, argv: readonly string[], searches: readonly KnownAnswers[], kept = {}): Promise<Performance> {
    const { world, acts } = rehearsal({ cwd, disk: nodeFiles, kept, readStdin: () => Promise.reject(new Error('nothing to read')) }, searches);
    const nobody = { isTTY: false, write: () => { throw new Error('an understudy shows nothing'); } } as never;
    const code = await run(argv, { ...world, stdout: nobody, stderr: nobody, env: {}, serveEditor: () => Promise.reject(new Error('no editor')) });
    return { acts, code };
}

function filesIn(folder: string): Record<string, string> {
    return Object.fromEntries(readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(name => name.includes('.')).sort().map(name => [name, readFileSync(join(folder, name), 'latin1')]));
}

const SLOW = { patience: 0, quick: -1 }, QUICK = { patience: 0, quick: Infinity };
const readyLater = { learn: () => {}, end: () => {}, ready: undefined };

/** Stops a command when its search is through, with or without an understudy that is ready by then. */
async function stopped(cwd: string, argv: readonly string[], isWithUnderstudy: boolean): Promise<Ran & { readonly performed: boolean }> {
    const stop = new AbortController(), kept = {};
    let searches: readonly KnownAnswers[] | undefined, ready: Performance | undefined, performed = false;
    const understudy: Understudy = {
        ...isWithUnderstudy ? SLOW : QUICK, learn: known => { searches = known; }, end: () => {},
        get ready() { performed = ready !== undefined; return ready; },
    };
    const through = async (): Promise<void> => {
        // once more with what it has kept, and nothing is on the disk by then
        const before = filesIn(cwd);
        while (isWithUnderstudy && searches === undefined) await new Promise(done => { setTimeout(done, 1); });
        if (isWithUnderstudy) for (let time = 0; time < 2; time++) ready = await rehearsed(cwd, argv, structuredClone(searches ?? []), kept);
        expect(filesIn(cwd)).toEqual(before);
        stop.abort('SIGINT');
    };
    const ran = await cofferwright(cwd, argv, { stop: stop.signal, understudy, prover: endless(() => { void through(); }) });
    return { ...ran, performed };
}

test.each(some(COMMANDS, 3).map(argv => [argv.join(' '), argv] as const))('what an understudy has ready is what the command would have done: %s', async (_name, argv) => {
    for (const files of [house, tooWide]) {
        const [cwd, twin] = [folderWith(files), folderWith(files)];
        const { performed, ...ran } = await stopped(cwd, argv, true), { performed: _, ...wanted } = await stopped(twin, argv, false);
        expect(performed).toBe(true);
        expect(ran).toEqual(wanted);
        expect(ran).toMatchObject({ code: 130, err: expect.stringContaining('The search for cheaper boards was stopped') as string });
        expect(filesIn(cwd)).toEqual(filesIn(twin));
    }
});

test('one that has read other files than the command did is not listened to', async () => {
    const cwd = folderWith(house), ready: Performance = { acts: [{ say: 'Something else was said first.' }], code: 0 };
    const stop = new AbortController(), understudy: Understudy = { ...SLOW, ...readyLater, ready };
    const { out, err } = await cofferwright(cwd, ['boards', '.', 'gone.coffer'], { stop: stop.signal, understudy, prover: endless(() => { stop.abort('SIGINT'); }) });
    expect(err).not.toContain('Something else');
    expect(out).toContain('For den.');
});

test.each(some(COMMANDS, 3).map(argv => [argv.join(' '), argv] as const))('before an understudy is ready there is what the command has done beforehand: %s', async (_name, argv) => {
    const [cwd, twin] = [folderWith(house), folderWith(house)];
    // stopped once the command has heard that it is to be rehearsed elsewhere too; and one for which nothing was found
    const stop = new AbortController(), understudy: Understudy = { ...SLOW, ...readyLater, learn: () => { stop.abort('SIGINT'); } };
    const ran = await cofferwright(cwd, argv, { stop: stop.signal, understudy, prover: silent(() => {}) });
    const none = new AbortController(), wanted = await cofferwright(twin, argv, { stop: none.signal, prover: silent(() => { none.abort('SIGINT'); }) });
    expect(ran).toEqual(wanted);
    expect(ran).toMatchObject({ code: 130, err: expect.stringContaining('The search for cheaper boards was stopped') as string });
    expect(filesIn(cwd)).toEqual(filesIn(twin));
});

test('while a command is done beforehand somebody listens: who stops it then gets a plan and the code of its end', async () => {
    const cwd = folderWith(house), stop = new AbortController(), { signal } = stop;
    let listens = false;
    const interrupts: Interrupts = {
        stopped: signal, late: new AbortController().signal, tidily: work => work(),
        stoppable: async work => {
            listens = true;
            try {
                return await work(signal);
            } finally {
                listens = false;
            }
        },
    };
    const heard: boolean[] = [];
    const understudy: Understudy = {
        ...readyLater, patience: 0,
        // asked for just before it is done beforehand
        get quick() {
            heard.push(listens);
            stop.abort('SIGINT');
            return -1;
        },
    };
    const { code, out, err } = await cofferwright(cwd, ['boards'], { interrupts, understudy, prover: silent(() => {}) });
    expect(heard).toEqual([true]);
    expect(code).toBe(130);
    expect(out).toContain('For den.');
    expect(err).toContain('The search for cheaper boards was stopped');
});

test('files that there is no time for are named', async () => {
    const cwd = folderWith(house), stop = new AbortController(), late = new AbortController();
    const prover = silent(() => { stop.abort('SIGINT'); late.abort(); });
    const { code, out, err } = await cofferwright(cwd, ['saw', '--sheets', 'sheets'], { stop: stop.signal, late: late.signal, prover });
    expect({ code, out }).toEqual({ code: 130, out: '' });
    expect(err).toMatch(/^Stopped before it was written: sheets\/boards-plum-street-4-1\.svg, .*sheets\/boards-plum-street-4\.html\.$/m);
    expect(Object.keys(filesIn(cwd)).filter(name => name.includes('sheets/'))).toEqual([]);
});
