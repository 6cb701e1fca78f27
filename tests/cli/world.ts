import { Writable } from 'node:stream';
import type { ExitCode } from '../../src/cli/exit-code.ts';
import { nodeFiles, type FileSystem } from '../../src/cli/file-system.ts';
import { run } from '../../src/cli/program.ts';
import type { Performance } from '../../src/cli/rehearsal.ts';
import { replaceFile } from '../../src/cli/replace-file.ts';
import { openTerminal } from '../../src/cli/terminal.ts';
import type { BoardProver } from '../../src/cutting/board-prover.ts';
import { proverHere } from './prover.ts';

interface Ran { readonly code: ExitCode; readonly out: string; readonly err: string }
interface Around {
    readonly stdin?: string | Uint8Array; readonly env?: NodeJS.ProcessEnv; readonly isTerminal?: boolean; readonly stop?: AbortSignal;
    readonly onErr?: (all: string) => void; readonly disk?: FileSystem;
    readonly prover?: BoardProver; readonly ready?: (performance: Performance) => void;
    readonly readStdin?: () => Promise<Uint8Array>;
}

/** Runs the program in this process, as if it had been called in `cwd`. */
export async function cofferwright(cwd: string, argv: readonly string[], {
    stdin = '', env = {}, isTerminal = false, stop = new AbortController().signal, onErr,
    disk = nodeFiles, prover = proverHere, ready, readStdin,
}: Around = {}): Promise<Ran> {
    let [out, err] = ['', ''];
    const stream = (write: (text: string) => void): NodeJS.WriteStream =>
        Object.assign(
            new Writable({ write: (chunk: Buffer, _encoding, done) => { write(String(chunk)); done(); } }), { isTTY: isTerminal },
        ) as unknown as NodeJS.WriteStream;
    const streams = {
        env, stdout: stream(text => { out += text; }) as NodeJS.Process['stdout'],
        stderr: stream(text => { err += text; onErr?.(err); }) as NodeJS.Process['stderr'],
    };
    const code = await run(argv, {
        cwd, disk, prover, ...ready && { ready }, stopped: stop, openTerminal: color => openTerminal(color, streams),
        replace: (path, content, before) => replaceFile(disk, path, content, before),
        serveEditor: () => Promise.reject(new Error('a test has no editor')),
        readStdin: readStdin ?? (() => Promise.resolve(typeof stdin === 'string' ? new TextEncoder().encode(stdin) : stdin)),
    });
    return { code, out, err };
}
