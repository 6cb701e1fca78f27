import { rmSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';
import { USUAL_STEPS } from '../cutting/look-closer.ts';
import { boardsInThreads } from '../worker/boards-thread.ts';
import { EXIT, type ExitCode } from './exit-code.ts';
import { nodeFiles } from './file-system.ts';
import { codeOfStop, ProcessInterrupts } from './interrupts.ts';
import { run } from './program.ts';
import { MOST_BYTES, reasonOf } from './read-text.ts';
import { terminalLines } from '../text/terminal.ts';
import { unfinished } from './replace-file.ts';
import { beUnderstudy, understudyInThread } from './understudy-thread.ts';

const interrupts = new ProcessInterrupts();

/** What has been read from standard input. */
let stdin: Uint8Array | undefined;

if (isMainThread) start();
else beUnderstudy();

function start(): void {
    // whatever ends the program in the middle of a write leaves no half of a file behind
    process.on('exit', () => unfinished.forEach(path => rmSync(path, { force: true })));

    process.stdout.on('error', outputLost);
    process.stderr.on('error', outputLost);
    process.on('uncaughtException', internal);
    process.on('unhandledRejection', internal);

    // in a bundle of its own, beside this one. A search that fails is a mistake in the program: a plan that is less than was asked for must not look like one
    const say = (words: string): never => { throw new Error(words); };
    const prover = boardsInThreads(new URL('./boards-worker.js', import.meta.url), { steps: USUAL_STEPS, keep: true, say });
    const argv = process.argv.slice(2), cwd = currentFolder();
    const understudy = understudyInThread(new URL(import.meta.url), { argv, cwd }, () => stdin);

    const { stdout, stderr, env } = process;
    run(argv, { cwd, disk: nodeFiles, stdout, stderr, env, readStdin, serveEditor, prover, interrupts, understudy }).then(end, internal);
}

/** By itself where nobody stopped it: then what is printed gets to its reader however slow that is. */
function end(code: ExitCode): void {
    process.exitCode = code;
    if (codeOfStop(interrupts.stopped) !== undefined) process.stdout.write('', () => { process.exit(code); });
}

/** Ends as soon as it is more than may be read: some inputs have no end. */
async function readStdin(): Promise<Uint8Array> {
    const chunks: Uint8Array[] = [];
    let size = 0;
    for await (const chunk of process.stdin) {
        chunks.push(chunk as Uint8Array);
        size += (chunk as Uint8Array).length;
        if (size > MOST_BYTES) break;
    }
    return stdin = Buffer.concat(chunks);
}

/** A reader that has seen enough (`| head`) closes the pipe, which is no failure, and no reason to write half of the files; a disk that is full is one. */
function outputLost(error: NodeJS.ErrnoException): void {
    if (error.code === 'EPIPE') interrupts.nobodyReads();
    else giveUp(`What the program writes ${reasonOf(error)}`);
}

function giveUp(why: string): never {
    try {
        process.stderr.write(terminalLines([`cofferwright: ${why}`]));
    } finally {
        process.exit(EXIT.usage);
    }
}

/** From here on the process is the editor's language server: it logs its own mistakes, lives on, and ends when the editor does. */
async function serveEditor(): Promise<never> {
    process.off('uncaughtException', internal);
    process.off('unhandledRejection', internal);
    await import('../server/main.ts');
    return new Promise(() => {});
}

function internal(error: unknown): void {
    // Output that goes to a file is written at once, and fails here; files that the program writes are looked after where it does.
    if ((error as NodeJS.ErrnoException | undefined)?.syscall === 'write') return outputLost(error as NodeJS.ErrnoException);
    const told = error instanceof Error ? error.stack ?? '' : String(error);
    process.stderr.write(terminalLines(['cofferwright: this is a mistake in the program, not in your files.', ...told.split('\n')]));
    process.exit(EXIT.internal);
}

function currentFolder(): string {
    try {
        return process.cwd();
    } catch (error) {
        giveUp(`The current folder ${reasonOf(error)}`);
    }
}
