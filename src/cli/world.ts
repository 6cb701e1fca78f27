import type { BoardProver } from '../cutting/board-prover.ts';
import type { FileSystem, FoundFile } from './file-system.ts';
import type { HeldFiles } from './held-files.ts';
import type { Terminal } from './terminal.ts';

/** The world the program runs in: replaced by tests, never reached for. */
export interface World {
    readonly cwd: string;
    readonly terminal: Terminal;
    readonly disk: FileSystem;
    /** All of standard input, or more than `MOST_BYTES` of it. */
    readStdin(): Promise<Uint8Array>;
    /** Looks for cheaper boards. */
    readonly prover: BoardProver;
    /** Aborted when the program is told to end, with the reason: a search ends with what it has found. */
    readonly stopped: AbortSignal;
    /** Puts a text in the place of the one that was read, as `replaceFile` does. */
    replace(path: string, content: string, before: FoundFile): Promise<void>;
    /** The key of a command that is done several times: what it has opened is not read again. */
    readonly kept?: object;
    /** Takes the files that are to be written; where there is none they are written. */
    readonly hold?: (files: HeldFiles) => void;
}
