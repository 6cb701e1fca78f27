import { EXIT, type ExitCode } from './exit-code.ts';

/** What tells the program to end: Ctrl+C, the system, a terminal that is closed. */
const SIGNALS = { SIGINT: EXIT.interrupted, SIGTERM: EXIT.terminated, SIGHUP: EXIT.hungUp } as const;
type SignalName = keyof typeof SIGNALS;

/**
 * Who listens when the program is told to end. Nobody does for most of the time: then the system ends it on the spot, also in
 * the middle of a long computation. Work that has something to show for it, or something to tidy up, says so.
 */
export interface Interrupts {
    /** Aborted when the program was told to end while work that can be stopped was going on, or has nobody to go on for. */
    readonly stopped: AbortSignal;
    /** Aborted a little after a signal stopped work: whoever is told to end has no time for more than what is nearly done. */
    readonly late: AbortSignal;
    /** Does work that can be stopped early. The first signal stops it; the next one finds nobody who listens. */
    stoppable<T>(work: (stop: AbortSignal) => Promise<T>): Promise<T>;
    /** Does work that a signal ends at once, but not before what it leaves half done is gone. */
    tidily<T>(work: () => Promise<T>): Promise<T>;
}

/** How long after a signal anything new is begun: with what it takes to end, less than the 0.2 s that a person takes for at once. */
const GRACE_MS = 100;

/** The signals of the process. Leaving it removes what is half done. */
export class ProcessInterrupts implements Interrupts {
    private readonly stop = new AbortController();
    private readonly over = new AbortController();
    readonly stopped = this.stop.signal;
    readonly late = this.over.signal;

    /** Nobody reads the output any more: what waits for changes has nobody to wait for. Everything else goes on; files are still written. */
    nobodyReads(): void {
        this.stop.abort(NOBODY_READS);
    }

    async stoppable<T>(work: (stop: AbortSignal) => Promise<T>): Promise<T> {
        if (this.stopped.aborted) return work(this.stopped);
        const deaf = listen(name => {
            deaf();
            this.stop.abort(name);
            setTimeout(() => { this.over.abort(); }, GRACE_MS).unref();
        });
        try {
            return await work(this.stopped);
        } finally {
            deaf();
        }
    }

    async tidily<T>(work: () => Promise<T>): Promise<T> {
        const deaf = listen(name => process.exit(SIGNALS[name]));
        try {
            return await work();
        } finally {
            deaf();
        }
    }
}

const NOBODY_READS = Symbol('nobody reads');

/** The exit code of a run that was told to end; undefined where it ends by itself. */
export function codeOfStop({ aborted, reason }: AbortSignal): ExitCode | undefined {
    return aborted && reason !== NOBODY_READS ? SIGNALS[reason as SignalName] ?? EXIT.interrupted : undefined;
}

function listen(heard: (name: SignalName) => void): () => void {
    const names = Object.keys(SIGNALS) as SignalName[];
    names.forEach(name => process.on(name, heard));
    return () => names.forEach(name => process.off(name, heard));
}
