import { Worker } from 'node:worker_threads';
import type { BoardProver } from '../cutting/board-prover.ts';
import type { Found } from '../cutting/look-closer.ts';
import type { FromBoardsWorker, ToBoardsWorker } from './messages.ts';

interface ThreadOptions {
    /** How much may be computed for the questions of one plan. */
    readonly steps: number;
    /** Told where a search fails; the plan then stays as good as it was. */
    readonly say: (words: string) => void;
    /** Keeps the thread for the next search: the solver is loaded once, and held on to. It does not keep the program alive. */
    readonly keep?: boolean;
}

/**
 * Looks for cheaper boards in threads: a search that nobody wants any more is ended at once, wherever it stands.
 * @param script the bundled boards-worker.ts, with the solver's WebAssembly beside it
 */
export function boardsInThreads(script: URL | string, { steps, say, keep = false }: ThreadOptions): BoardProver {
    let spare: Worker | undefined;
    return {
        prove(asked, found) {
            const worker = spare ?? new Worker(script);
            spare = undefined;
            worker.ref();
            let ended = false;
            let open = asked.length;
            const last = new Map<number, Found>();
            const stop = (): void => {
                if (ended) return;
                ended = true;
                void worker.terminate();
            };
            const over = (): void => {
                if (!keep) return stop();
                ended = true;
                worker.off('message', heard).off('error', failed).unref();
                spare = worker;
            };
            const heard = (message: FromBoardsWorker): void => {
                if (ended) return;
                if ('failed' in message) return giveUp(message.failed);
                const { index, answer, isLast } = message.found;
                last.set(index, message.found);
                if (isLast && --open === 0) over();
                found(index, answer, isLast);
            };
            const failed = (error: unknown): void => { if (!ended) giveUp(String(error)); };
            // what is known stays, and nobody waits for more
            const giveUp = (why: string): void => {
                stop();
                say(`boards: ${why}`);
                asked.forEach(({ layouts }, index) => {
                    const before = last.get(index);
                    if (!before?.isLast) found(index, before?.answer ?? { layouts, bound: 0 }, true);
                });
            };
            worker.on('message', heard).on('error', failed);
            const message: ToBoardsWorker = { asked, steps };
            worker.postMessage(message);
            return stop;
        },
    };
}
