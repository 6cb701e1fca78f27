import { Worker } from 'node:worker_threads';
import type { Found } from '../cutting/look-closer.ts';
import type { BoardProver } from '../server/panes/board-proofs.ts';
import type { FromBoardsWorker, ToBoardsWorker } from './messages.ts';

/**
 * Looks for cheaper boards in threads, one a search: a search that nobody wants any more is ended at once, wherever it stands.
 * @param script the bundled boards-worker.ts, with the solver's WebAssembly beside it
 * @param say where a search that fails is told; the plan then stays as good as it was
 */
export function boardsInThreads(script: URL | string, steps: number, say: (words: string) => void): BoardProver {
    return {
        prove(asked, found) {
            const worker = new Worker(script);
            let ended = false;
            const last = new Map<number, Found>();
            const stop = (): void => {
                ended = true;
                void worker.terminate();
            };
            worker.on('message', (message: FromBoardsWorker) => {
                if (ended) return;
                if ('failed' in message) {
                    say(`boards: ${message.failed}`);
                    giveUp();
                } else {
                    const { index, answer, isLast } = message.found;
                    last.set(index, message.found);
                    found(index, answer, isLast);
                }
            });
            worker.on('error', error => {
                if (ended) return;
                say(`boards: ${String(error)}`);
                giveUp();
            });
            // what is known stays, and nobody waits for more
            const giveUp = (): void => {
                stop();
                asked.forEach(({ layouts }, index) => {
                    const before = last.get(index);
                    if (!before?.isLast) found(index, before?.answer ?? { layouts, bound: 0 }, true);
                });
            };
            const message: ToBoardsWorker = { asked, steps };
            worker.postMessage(message);
            return stop;
        },
    };
}
