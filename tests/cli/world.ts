import { Writable } from 'node:stream';
import type { ExitCode } from '../../src/cli/exit-code.ts';
import { nodeFiles, type FileSystem } from '../../src/cli/file-system.ts';
import { run } from '../../src/cli/program.ts';
import type { Interrupts } from '../../src/cli/interrupts.ts';
import type { BoardProver } from '../../src/cutting/board-prover.ts';
import type { Understudy } from '../../src/cli/understudy.ts';
import { proverHere } from './prover.ts';

export interface Ran { readonly code: ExitCode; readonly out: string; readonly err: string }
interface Around {
    readonly stdin?: string | Uint8Array; readonly env?: NodeJS.ProcessEnv; readonly isTerminal?: boolean; readonly stop?: AbortSignal;
    readonly late?: AbortSignal; readonly onErr?: (all: string) => void; readonly disk?: FileSystem;
    readonly prover?: BoardProver; readonly understudy?: Understudy;
    readonly readStdin?: () => Promise<Uint8Array>; readonly interrupts?: Interrupts;
}

/** Runs the program in this process, as if it had been called in `cwd`. */
export async function cofferwright(cwd: string, argv: readonly string[], {
    stdin = '', env = {}, isTerminal = false, stop = new AbortController().signal, late = new AbortController().signal, onErr,
    disk = nodeFiles, prover = proverHere, understudy, readStdin,
    interrupts = { stopped: stop, late, stoppable: work => work(stop), tidily: work => work() },
}: Around = {}): Promise<Ran> {
    let [out, err] = ['', ''];
    const stream = (write: (text: string) => void): NodeJS.WriteStream =>
        Object.assign(
            new Writable({ write: (chunk: Buffer, _encoding, done) => { write(String(chunk)); done(); } }), { isTTY: isTerminal },
        ) as unknown as NodeJS.WriteStream;
    const code = await run(argv, {
        cwd, env, disk, prover, ...understudy && { understudy }, interrupts,
        serveEditor: () => Promise.reject(new Error('a test has no editor')),
        readStdin: readStdin ?? (() => Promise.resolve(typeof stdin === 'string' ? new TextEncoder().encode(stdin) : stdin)),
        stdout: stream(text => { out += text; }) as NodeJS.Process['stdout'],
        stderr: stream(text => { err += text; onErr?.(err); }) as NodeJS.Process['stderr'],
    });
    return { code, out, err };
}
