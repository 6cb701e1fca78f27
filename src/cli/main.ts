import { fstatSync, rmSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { Worker } from 'node:worker_threads';
import { EXIT, type ExitCode } from './exit-code.ts';
import { nodeFiles } from './file-system.ts';
import { Front, TIMES } from './front.ts';
import { SIGNALS, type SignalName } from './interrupts.ts';
import type { Called, ToFront } from './messages.ts';
import { MOST_BYTES, reasonOf } from './read-text.ts';
import { terminalLines } from '../text/terminal.ts';
import { unfinished } from './replace-file.ts';
import { openTerminal } from './terminal.ts';

// The main thread computes nothing, so that it hears at once whoever stops the program. See front.ts for what it does, command.ts for the rest.
// whatever ends the program in the middle of a write leaves no half of a file behind
process.on('exit', tidyUp);
process.stdout.on('error', outputLost);
process.stderr.on('error', outputLost);
process.on('uncaughtException', internal);
process.on('unhandledRejection', internal);

// A command is over in a second or two: what runs in it often enough to be compiled for speed mostly does not run long enough after that to be worth it.
// So that is done later, of what runs very often alone: see DEVELOPERS.md for what it saves. V8 11, Node 20's,
// has this budget; 13, Node 24's, does not know it and says so; those between were not tried.
const LAST_V8 = 11;
if (Number.parseInt(process.versions.v8, 10) <= LAST_V8) setFlagsFromString('--interrupt-budget=1000000');

const called: Called = { argv: process.argv.slice(2), cwd: currentFolder() };
const thread = new Worker(new URL('./command.js', import.meta.url), { workerData: called });
const front = new Front({
    cwd: called.cwd, disk: nodeFiles, readStdin, serve, leave, times: TIMES,
    tell: message => { thread.postMessage(message); },
    endThread: () => { void thread.terminate(); },
    openTerminal(color) {
        const terminal = openTerminal(color, process);
        return { ...terminal, result: text => { deafWhile(() => { terminal.result(text); }); } };
    },
});
thread.on('error', threadLost).on('message', (message: ToFront) => { front.hear(message); });
const heard = (signal: SignalName): void => { void front.stop(signal); };
const names = Object.keys(SIGNALS) as SignalName[];
names.forEach(name => process.on(name, heard));

/** A reader may take its time, and nothing is heard until it has read: meanwhile the system ends the program. */
function deafWhile(print: () => void): void {
    names.forEach(name => process.off(name, heard));
    try {
        print();
    } finally {
        names.forEach(name => process.on(name, heard));
    }
}

/** By itself where nobody stopped it: then what is printed gets to its reader however slow that is. */
function leave(code: ExitCode, stopped?: { readonly signal: SignalName; readonly within: number }): void {
    process.exitCode = code;
    const ended = thread.terminate();
    if (stopped === undefined) {
        names.forEach(name => process.off(name, heard));
        return;
    }
    // a thread with much to give back takes its time; the system does not, and a shell is told the same code
    setTimeout(() => {
        tidyUp();
        names.forEach(name => process.off(name, heard));
        process.kill(process.pid, stopped.signal);
    }, stopped.within);
    void ended.then(() => { process.stdout.write('', () => { process.exit(code); }); });
}

function tidyUp(): void {
    unfinished.forEach(path => { rmSync(path, { force: true }); });
}

/** Ends as soon as it is more than may be read: some inputs have no end. */
async function readStdin(): Promise<Uint8Array> {
    // which Node takes for an empty text
    if (fstatSync(0).isDirectory()) throw new Error('is a folder');
    const chunks: Uint8Array[] = [];
    let size = 0;
    for await (const chunk of process.stdin) {
        chunks.push(chunk as Uint8Array);
        size += (chunk as Uint8Array).length;
        if (size > MOST_BYTES) break;
    }
    return Buffer.concat(chunks);
}

/** A reader that has seen enough (`| head`) closes the pipe, which is no failure, and no reason to write half of the files; a disk that is full is one. */
function outputLost(error: NodeJS.ErrnoException): void {
    if (error.code === 'EPIPE') thread.postMessage({ stop: 'nobody reads' });
    else giveUp(`What the program writes ${reasonOf(error)}`);
}

/** The system may have no thread to give, too few files that are open at once, or too little memory; all else is a mistake in the program. */
function threadLost(error: NodeJS.ErrnoException): void {
    if (error.code === 'ERR_WORKER_INIT_FAILED') giveUp(`The system lets no thread begin (${error.message})`);
    // Node tells some of them without their code
    if (error.code === 'EMFILE' || error.code === 'ENFILE' || error.message.includes('too many open files')) giveUp('The system lets too few files be open at once');
    if (error.code === 'ERR_WORKER_OUT_OF_MEMORY') giveUp('There is not enough memory for what was asked');
    internal(error);
}

function giveUp(why: string): never {
    try {
        process.stderr.write(terminalLines([`cofferwright: ${why}`]));
    } finally {
        process.exit(EXIT.usage);
    }
}

/** From here on the process is the editor's language server: it logs its own mistakes, lives on, and ends when the editor does. */
function serve(): void {
    process.off('uncaughtException', internal);
    process.off('unhandledRejection', internal);
    names.forEach(name => process.off(name, heard));
    void thread.terminate();
    void import('../server/main.ts');
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
