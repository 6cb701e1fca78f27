import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { nodeFiles } from '../../src/cli/file-system.ts';
import { Front, type FrontWays } from '../../src/cli/front.ts';
import type { ToFront } from '../../src/cli/messages.ts';
import type { Act, Performance } from '../../src/cli/rehearsal.ts';
import { paint } from '../../src/report/look.ts';
import { fileName } from '../../src/text/file-name.ts';
import { printJson } from '../../src/text/json.ts';
import { terminalLine, terminalLines, withStyles } from '../../src/text/terminal.ts';
import type { BoardProver } from '../../src/cutting/board-prover.ts';
import { some } from '../support/full.ts';
import { failingDisk } from './failing-disk.ts';
import { folderWith } from './folder.ts';
import { house, tooWide } from './house.ts';
import { proverHere } from './prover.ts';
import { cofferwright } from './world.ts';

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

function filesIn(folder: string): Record<string, string> {
    return Object.fromEntries(readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(name => name.includes('.')).sort().map(name => [name, readFileSync(join(folder, name), 'latin1')]));
}

/** What a command has ready when its search is through and goes on all the same. */
async function rehearsed(cwd: string, argv: readonly string[]): Promise<Performance> {
    const stop = new AbortController(), performances: Performance[] = [];
    let answers = 0, isThrough = false;
    const prover: BoardProver = {
        prove(asked, found) {
            let open = asked.length;
            return proverHere.prove(asked, (index, answer, isLast) => {
                answers++;
                if (isLast) isThrough = --open === 0;
                found(index, answer, false);
            });
        },
    };
    const before = filesIn(cwd);
    await cofferwright(cwd, argv, {
        stop: stop.signal, prover,
        ready(performance) {
            expect(filesIn(cwd)).toEqual(before);
            performances.push(performance);
            // before that answers are still to come, or were found while it was made
            if (isThrough && performance.answers === answers) stop.abort('SIGINT');
        },
    });
    return performances.at(-1)!;
}

/** The main thread, without the one of the command. */
class Fronted {
    readonly out: string[] = [];
    readonly err: string[] = [];
    readonly progress: string[] = [];
    readonly told: unknown[] = [];
    isThreadEnded = false;
    readonly left: Promise<number>;
    readonly front: Front;

    constructor(cwd: string, ways: Partial<FrontWays> = {}) {
        let leave = (_code: number): void => {};
        this.left = new Promise(resolve => { leave = resolve; });
        this.front = new Front({
            cwd, disk: nodeFiles, readStdin: () => Promise.resolve(new TextEncoder().encode('said')), serve: () => {}, leave, endThread: () => { this.isThreadEnded = true; },
            tell: message => { this.told.push(message); }, times: { end: 20, first: 20, late: 10_000, giveUp: 10_000, over: 10_000 },
            openTerminal: () => ({ result: text => { this.out.push(withStyles(text, () => '')); }, say: line => { this.err.push(withStyles(terminalLine(line), () => '')); }, progress: text => { this.progress.push(text); }, paint }),
            ...ways,
        });
        this.hear({ color: 'never' });
    }

    hear(...messages: ToFront[]): this {
        messages.forEach(message => { this.front.hear(message); });
        return this;
    }
}

const result = (text: string): Act => ({ result: terminalLines([text]) });
const NAMES = ['a', 'b'].map(name => fileName('', name, 'json'));
const writing = (cwd: string): Act => ({ write: { options: { out: 'out' }, from: `file://${cwd}/job.coffer`, files: NAMES.map(name => ({ name, content: printJson({ name }) })) } });

test.each(some(COMMANDS, 2).map(argv => [argv.join(' '), argv] as const))('what is ready while the search goes on is what the command does when it is stopped: %s', async (_name, argv) => {
    for (const files of [house, tooWide]) {
        const [cwd, twin] = [folderWith(files), folderWith(files)];
        const ready = await rehearsed(folderWith(files), argv), stop = new AbortController();
        const wanted = await cofferwright(twin, argv, { stop: stop.signal, prover: endless(() => { stop.abort('SIGINT'); }) });
        const fronted = new Fronted(cwd).hear({ searches: true }, { ready: JSON.parse(JSON.stringify(ready).replaceAll(twin, cwd)) as Performance });
        await fronted.front.stop('SIGINT');
        expect({ code: await fronted.left, out: fronted.out.join(''), err: fronted.err.map(line => `${line}\n`).join('') }).toEqual({ ...wanted, code: 130 });
        expect(wanted.err).toContain('The search for cheaper boards was stopped');
        expect(Object.keys(filesIn(cwd))).toEqual(Object.keys(filesIn(twin)));
    }
});

test('nothing is rehearsed once the search is over, nor where nobody searches', async () => {
    const ready: Performance[] = [];
    const { code } = await cofferwright(folderWith(house), ['boards'], { ready: performance => { ready.push(performance); } });
    // on a busy machine a search may last long enough to be rehearsed; what counts is that nothing comes after its end
    const atEnd = ready.length;
    await new Promise(done => { setTimeout(done, 300); });
    expect({ code, after: ready.length - atEnd }).toEqual({ code: 0, after: 0 });
    await cofferwright(folderWith(house), ['boards', '--quick'], { ready: performance => { ready.push(performance); } });
    expect(ready.length - atEnd).toBe(0);
});

test('a command does what its thread tells, in that order, and ends with the graver code', async () => {
    const cwd = folderWith({ 'job.coffer': '', 'out/a.json': 'precious' });
    const fronted = new Fronted(cwd).hear({ act: { say: 'one' } }, { act: result('two') }, { act: writing(cwd) }, { act: { say: 'three' } }, { end: 1 });
    expect(await fronted.left).toBe(2);
    expect(fronted.out).toEqual(['two\n', 'out/b.json\n']);
    expect(fronted.err).toEqual(['one', 'out/a.json is there already, and this program has not made it: left as it is; --force replaces it', 'three']);
});

test('a folder that cannot be had ends the command', async () => {
    const cwd = folderWith({ 'job.coffer': '' });
    const fronted = new Fronted(cwd, { disk: failingDisk(step => (step === 'mkdir' ? 'EROFS' : undefined)) }).hear({ act: writing(cwd) }, { act: { say: 'after' } }, { end: 0 });
    expect(await fronted.left).toBe(2);
    expect(fronted.err).toEqual(['cofferwright: out lies on a disk that cannot be written to']);
});

test.each([
    ['ENOENT', 'the system keeps no folders of yours there'], ['ENOTDIR', 'a part of its path is a file, and no folder'],
])('a folder that cannot be made is told with why and what to do: %s', async (code, why) => {
    const cwd = folderWith({ 'job.coffer': '' });
    const fronted = new Fronted(cwd, { disk: failingDisk(step => (step === 'mkdir' ? code : undefined)) }).hear({ act: writing(cwd) }, { end: 0 });
    expect(await fronted.left).toBe(2);
    expect(fronted.err).toEqual([`cofferwright: out cannot be made: ${why}. Name another folder with --out`]);
});

test('the thread is answered: standard input, a text written anew, and why it was not', async () => {
    const cwd = folderWith({ 'job.coffer': 'old' }), path = join(cwd, 'job.coffer'), before = await nodeFiles.stat(path);
    const fronted = new Fronted(cwd).hear({ asked: 'stdin', id: 0 });
    for (const id of [1, 2]) {
        while (fronted.told.length < id) await new Promise(done => { setTimeout(done, 1); });
        fronted.hear({ asked: { replace: path, content: 'new', before }, id });
    }
    while (fronted.told.length < 3) await new Promise(done => { setTimeout(done, 1); });
    expect(fronted.told).toEqual([
        { id: 0, answered: { bytes: new TextEncoder().encode('said') } }, { id: 1, answered: { done: true } }, { id: 2, answered: { failed: 'changed meanwhile', code: 'CHANGED' } },
    ]);
    expect(readFileSync(path, 'utf8')).toBe('new');
});

test('who stops a search gets its end where that comes at once, and else what is ready', async () => {
    const cwd = folderWith({}), searching = (): Fronted => new Fronted(cwd).hear({ act: { say: 'first' } }, { searches: true }, { ready: { acts: [{ say: 'first' }, result('ready')], code: 0, answers: 0 } });
    const atOnce = searching(), stopped = atOnce.front.stop('SIGTERM');
    atOnce.hear({ act: result('newest') }, { end: 0 });
    await stopped;
    expect([await atOnce.left, atOnce.out, atOnce.told, atOnce.isThreadEnded]).toEqual([143, ['newest\n'], [{ stop: 'SIGTERM' }], true]);

    const later = searching();
    await later.front.stop('SIGINT');
    expect([await later.left, later.out, later.err]).toEqual([130, ['ready\n'], ['first']]);
    // what comes then is too late
    later.hear({ act: result('newest') }, { end: 0 });
    expect(later.out).toEqual(['ready\n']);
});

test('where nothing is ready, or what is ready begins otherwise than what was done, that is said', async () => {
    const early = new Fronted(folderWith({})).hear({ searches: true }), other = new Fronted(folderWith({})).hear({ act: { say: 'first' } }, { searches: true }, { ready: { acts: [{ say: 'second' }, result('ready')], code: 0, answers: 0 } });
    await early.front.stop('SIGINT');
    await other.front.stop('SIGINT');
    expect([await early.left, early.out, early.err]).toEqual([130, [], ['Stopped before the first plan could be shown.']]);
    expect([await other.left, other.out, other.err]).toEqual([130, [], ['first', 'Stopped before the rest could be shown.']]);
});

test('a line that says what Ctrl+C would do says it once there is something to take', () => {
    const fronted = new Fronted(folderWith({})).hear({ searches: true }, { progress: 'Looking …' }, { ready: { acts: [], code: 0, answers: 0 } }, { progress: 'Looking again …' });
    expect(fronted.progress).toEqual(['Looking …', 'Looking … Ctrl+C takes the best so far.', 'Looking again … Ctrl+C takes the best so far.']);
});

test('who stops a command that searches nothing waits for nothing; asked once more it ends on the spot', async () => {
    const fronted = new Fronted(folderWith({}));
    await fronted.front.stop('SIGHUP');
    expect([await fronted.left, fronted.err, fronted.isThreadEnded]).toEqual([129, [], true]);

    let times = 0;
    const twice = new Fronted(folderWith({}), { leave: () => { times++; } }).hear({ searches: true });
    const stopped = twice.front.stop('SIGINT');
    await twice.front.stop('SIGINT');
    expect(times).toBe(1);
    await stopped;
});

test('files that there is no time for are named: those that were not begun, and one that never ends', async () => {
    const cwd = folderWith({ 'job.coffer': '' }), ready: ToFront = { ready: { acts: [writing(cwd)], code: 0, answers: 0 } };
    const late = new Fronted(cwd, { times: { end: 5, first: 5, late: 0, giveUp: 10_000, over: 10_000 } }).hear({ searches: true }, ready);
    await late.front.stop('SIGINT');
    expect([await late.left, late.out, late.err]).toEqual([130, [], ['Stopped before it was written: out/a.json, out/b.json.']]);

    const never = { ...nodeFiles, rename: () => new Promise<never>(() => {}) };
    const hung = new Fronted(cwd, { disk: never, times: { end: 5, first: 5, late: 20, giveUp: 200, over: 10_000 } }).hear({ searches: true }, ready);
    void hung.front.stop('SIGINT');
    expect([await hung.left, hung.out, hung.err]).toEqual([130, [], ['Stopped before it was written: out/a.json, out/b.json.']]);

    // in the middle of files that are written anyway: the one that is begun is ended
    const drawing = new Fronted(cwd).hear({ act: writing(cwd) }, { act: { ...writing(cwd) } });
    await drawing.front.stop('SIGINT');
    expect(await drawing.left).toBe(130);
    expect([...drawing.out, ...drawing.err].join('')).toContain('out/b.json');
});
