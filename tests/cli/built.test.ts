import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { constants, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { FULL, some } from '../support/full.ts';
import { folderWith } from './folder.ts';
import { den, house, tooWide } from './house.ts';
import { cofferwright } from './world.ts';

/** The program as it is shipped, in one file, run as a process of its own. */
const folder = mkdtempSync(join(tmpdir(), 'cofferwright-built-'));
const main = join(folder, 'main.js');
beforeAll(async () => {
    // @ts-expect-error a build script, which has no types
    const { bundleCommandLine } = await import('../../src/build/bundle.mjs') as { bundleCommandLine: (outdir: string) => Promise<unknown> };
    await bundleCommandLine(folder);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(cwd: string, argv: readonly string[], input?: string): { code: number | null; out: string; err: string } {
    const { status, stdout, stderr } = spawnSync(process.execPath, [main, ...argv], { cwd, encoding: 'utf8', input, maxBuffer: 1e8 });
    return { code: status, out: stdout, err: stderr };
}

/** Starts of the program take most of the time: some of them are left to where everything is run. */
const whole = (name: string, run: () => void | Promise<void>): void => { if (FULL) test(name, run); };

describe('the built program', () => {
    /** A folder where nothing is written: each command that should not is asked in it once. */
    const untouched = join(folder, 'untouched');
    beforeAll(() => {
        mkdirSync(untouched);
        for (const [name, text] of Object.entries(house)) writeFileSync(join(untouched, name), text);
    });

    test('ends with 0, 1 or 2 as it went', () => {
        expect(run(untouched, ['check'])).toEqual({ code: 0, out: '', err: 'Nothing found in 4 files\n' });
        expect(run(folderWith(tooWide), ['check', '--format', 'concise'])).toMatchObject({ code: 1, out: expect.stringMatching(/^box\.coffer:\d+:\d+: error: /) as unknown });
        expect(run(folderWith({}), ['check', 'gone.coffer'])).toMatchObject({ code: 2, out: '' });
    });

    test('reads standard input', () => {
        expect(run(folderWith(house), ['check', '--stdin-file-path', 'box.coffer'], tooWide['box.coffer']).code).toBe(1);
    });

    test.skipIf(process.platform === 'win32')('reads standard input without an end only as far as a file may go', () => {
        const { status, stderr } = spawnSync('sh', ['-c', '"$0" "$1" check - < /dev/zero', process.execPath, main], { encoding: 'utf8', timeout: 240_000 });
        expect({ status, stderr }).toEqual({ status: 2, stderr: 'cofferwright: Standard input is too large for a job file: more than 8 MB\n' });
    });

    const sh = (script: string) => spawnSync('sh', ['-c', script, process.execPath, main], { cwd: untouched, encoding: 'utf8', timeout: 240_000 });
    test.skipIf(process.platform === 'win32')('a folder as standard input is told', () => {
        expect(sh('"$0" "$1" check - < /')).toMatchObject({ status: 2, stdout: '', stderr: 'cofferwright: Standard input is a folder\n' });
    });

    test.skipIf(process.platform === 'win32')('a system that has too little to give is told, however little it is', () => {
        // each version of Node takes another number of files for itself; with fewer it ends before the program begins
        const noThread = /^cofferwright: The system lets no thread begin \(.*EMFILE\)$/, told: ReturnType<typeof sh>[] = [];
        for (const files of [22, 24, 20, 26]) {
            const ran = sh(`ulimit -n ${files}; "$0" "$1" check`);
            if (ran.stderr.includes('cofferwright:')) told.push(ran);
            // everyday the first that comes so far
            if (!FULL && noThread.test(ran.stderr.split('\n')[0]!)) break;
        }
        const words = told.map(({ stderr }) => stderr.split('\n')[0]);
        expect(words).toContainEqual(expect.stringMatching(noThread));
        expect(words.filter(line => line!.includes('mistake in the program'))).toEqual([]);
        expect(told.filter(({ status, stdout }) => status !== 2 || stdout !== '')).toEqual([]);
    });

    whole('writes all of a long list before it ends', () => {
        const rooms = Object.fromEntries(Array.from({ length: 20 }, (_, i) => [`room-${i}.coffer`, den.replace('room den', `room den-${i}`)]));
        const { out, code } = run(folderWith({ ...house, ...rooms }), ['cut-list', '--format', 'json']);
        expect(out.length).toBeGreaterThan(1_000_000);
        expect((JSON.parse(out) as { rooms: unknown[] }).rooms).toHaveLength(21);
        expect(code).toBe(0);
    });

    test('looks for the cheapest boards with the solver that lies beside it', () => {
        const { out, err, code } = run(untouched, ['boards']);
        expect(out).toContain('For den. None cheaper exists (ways of cutting compared: cut across; no piece turned).');
        expect({ err, code }).toEqual({ err: '', code: 0 });
    });

    test('a reader that closes the pipe early is no failure', async () => {
        const cwd = folderWith({ ...house, ...Object.fromEntries(Array.from({ length: 20 }, (_, i) => [`room-${i}.coffer`, den.replace('room den', `room den-${i}`)])) });
        const child = spawn(process.execPath, [main, 'cut-list', '--format', 'json'], { cwd, stdio: ['ignore', 'pipe', 'pipe'] });
        let err = '';
        child.stderr.on('data', (chunk: Buffer) => { err += String(chunk); });
        child.stdout.once('data', () => child.stdout.destroy());
        const code = await new Promise(done => child.once('exit', done));
        expect({ code, err }).toEqual({ code: 0, err: '' });
    });

    whole('a disk that is full, or a folder that is gone, is no mistake in the program: 2', () => {
        const wrecked = (wreck: string): string => {
            writeFileSync(join(folder, 'disk.mjs'), wreck);
            const { status, stderr } = spawnSync(process.execPath, ['--import', join(folder, 'disk.mjs'), main, 'cut-list'], { cwd: folderWith(house), encoding: 'utf8' });
            return `${status} ${stderr}`;
        };
        expect(wrecked('process.stdout.write = () => { throw Object.assign(new Error(), { code: "ENOSPC", syscall: "write" }); };'))
            .toBe('2 cofferwright: What the program writes does not fit on the disk any more\n');
        expect(wrecked('process.cwd = () => { throw Object.assign(new Error(), { code: "ENOENT", syscall: "uv_cwd" }); };'))
            .toBe('2 cofferwright: The current folder is not there\n');
    });

    test.skipIf(process.platform === 'win32')('a closed pipe keeps no file from being written, and ends --watch', async () => {
        const sh = (script: string, cwd: string) => spawnSync('sh', ['-c', script, process.execPath, main], { cwd, encoding: 'utf8', timeout: 240_000 });
        const cwd = folderWith(house);
        const drawn = sh('{ "$0" "$1" draw; echo "ended with $?" >&2; } | true', cwd);
        expect(drawn.stderr).toBe('ended with 0\n');
        expect(readdirSync(join(cwd, 'drawings')).sort()).toEqual(['.cofferwright.sha256', 'meetings-den.svg', 'plan-den.svg', 'section-band-den.svg', 'section-box.svg']);
        expect(sh('{ "$0" "$1" cut-list; echo "ended with $?" >&2; } | head -1', cwd).stderr).toBe('ended with 0\n');
        expect(sh('{ "$0" "$1" check --watch; echo "ended with $?" >&2; } | true', folderWith(tooWide)).stderr).toMatch(/Watching for changes; stop with Ctrl\+C\.\nended with 0\n$/);
    });

    describe('is stopped while it looks for cheaper boards', () => {
        const COMMANDS: readonly (readonly [signal: NodeJS.Signals, code: number, argv: readonly string[]])[] = [
            ['SIGINT', 130, ['boards']], ['SIGTERM', 143, ['order']], ['SIGINT', 130, ['boards', '--format', 'json']], ['SIGINT', 130, ['saw']], ['SIGTERM', 143, ['labels']],
            ['SIGINT', 130, ['estimate']], ['SIGINT', 130, ['print', '--page', 'boards']], ['SIGHUP', 129, ['bid', '--format', 'html']],
        ];
        // the search as it is, but what it finds last never comes: so it is sure to be going on. Told when the command has been rehearsed with all of it
        const endless = `import { BroadcastChannel, isMainThread, Worker } from 'node:worker_threads';
            const { on, postMessage } = Worker.prototype, through = new BroadcastChannel('through');
            let open = 0, answers = 0, all, known;
            const tell = () => { if (known === all) process.send('found'); };
            if (isMainThread) through.onmessage = ({ data }) => { all = data; tell(); };
            through.unref();
            Worker.prototype.postMessage = function (message) { open = message.asked?.length ?? open; return postMessage.call(this, message); };
            Worker.prototype.on = function (name, heard) {
                return on.call(this, name, name !== 'message' ? heard : message => {
                    const { found, ready } = message;
                    heard(found === undefined ? message : { found: { ...found, isLast: false } });
                    if (found !== undefined) answers++;
                    if (found?.isLast && --open === 0) through.postMessage(answers);
                    if (ready === undefined) return;
                    known = ready.answers;
                    tell();
                });
            };`;

        test.each(some(COMMANDS, 8))('by %s: %i; the best plan is kept: %j', async (signal, code, argv) => {
            writeFileSync(join(folder, 'endless.mjs'), endless);
            const cwd = folderWith(house), twin = folderWith(house);
            const child = spawn(process.execPath, ['--import', join(folder, 'endless.mjs'), main, ...argv], { cwd, stdio: ['ignore', 'pipe', 'pipe', 'ipc'] });
            let out = '', err = '';
            child.stdout!.on('data', (chunk: Buffer) => { out += String(chunk); });
            child.stderr!.on('data', (chunk: Buffer) => { err += String(chunk); });
            child.on('message', () => child.kill(signal));
            // where the thread takes its time to end, the system ends the program; a shell tells the same code of both
            const ended = await new Promise(done => child.once('close', (exit, killed) => done(killed ? 128 + constants.signals[killed] : exit)));
            const whole = run(twin, argv);
            // on a slow machine there is no time for some of the files, and then they are named
            const unwritten = /^Stopped before it was written: (.*)\.\n/m.exec(err), named = unwritten?.[1]?.split(', ') ?? [];
            // one that the disk had in hand when time was up may come all the same
            const late = named.filter(name => !out.split('\n').includes(name));
            const said = err.replace(unwritten?.[0] ?? '', '');
            expect({ ended, said }).toEqual({ ended: code, said: `The search for cheaper boards was stopped: these are the best found so far.\n${whole.err}` });
            if (late.length === 0) expect(out).toBe(whole.out);
            else expect([...out.split('\n'), ...late].sort()).toEqual(whole.out.split('\n').sort());
            expect(whole.out).not.toBe('');
            const names = (at: string): string[] => readdirSync(at, { recursive: true, encoding: 'utf8' }).sort();
            const wanted = names(twin).filter(name => !late.includes(name));
            if (named.length > 0) expect([...wanted, ...named]).toEqual(expect.arrayContaining(names(cwd)));
            else expect(names(cwd)).toEqual(wanted);
        });
    });

    test('Ctrl+C ends --watch in good order', async () => {
        const child = spawn(process.execPath, [main, 'check', '--watch'], { cwd: folderWith(house), stdio: ['ignore', 'ignore', 'pipe'] });
        child.stderr.on('data', (chunk: Buffer) => { if (String(chunk).includes('Watching')) child.kill('SIGINT'); });
        expect(await new Promise(done => child.once('exit', (code, signal) => done(signal ? 128 + constants.signals[signal] : code)))).toBe(130);
    });

    test('nothing is written where nothing should be', async () => {
        // each of these as a process of its own where everything is run; what it writes is the same
        for (const argv of [['cut-list'], ['explain'], ['format', '--check']]) {
            if (FULL) run(untouched, argv);
            else await cofferwright(untouched, argv);
        }
        expect(readdirSync(untouched).sort()).toEqual(Object.keys(house).sort());
    });

    test('a mistake in the program says so: 101', () => {
        writeFileSync(join(folder, 'wreck.mjs'), 'JSON.stringify = () => { throw new Error("wrecked"); };\n');
        const { status, stderr } = spawnSync(process.execPath, ['--import', join(folder, 'wreck.mjs'), main, 'check', '--format', 'json'], { cwd: folderWith(house), encoding: 'utf8' });
        expect(status).toBe(101);
        expect(stderr).toContain('this is a mistake in the program, not in your files');
    });
});
