import type { FileSystem } from './file-system.ts';
import type { Terminal } from './terminal.ts';

/** The world the program runs in: replaced by tests, never reached for. */
export interface World {
    readonly cwd: string;
    readonly terminal: Terminal;
    readonly disk: FileSystem;
    /** All of standard input, or more than `MOST_BYTES` of it. */
    readStdin(): Promise<Uint8Array>;
    /** Ends `--watch`. */
    readonly stop: AbortSignal;
}
