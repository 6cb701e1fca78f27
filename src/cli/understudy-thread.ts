import { parentPort, Worker, workerData } from 'node:worker_threads';
import { nodeFiles } from './file-system.ts';
import { run } from './program.ts';
import { rehearsal, type KnownAnswers, type Performance, type Understudy } from './understudy.ts';

interface Given { readonly argv: readonly string[]; readonly cwd: string }
interface Asked { readonly searches: readonly KnownAnswers[]; readonly stdin: Uint8Array | undefined }
/** What is said where it cannot be done: then the command does the rest itself when it is stopped. */
type Answered = Performance | 'cannot';

/** Between two times the understudy rests so many times as long as it took. */
const REST = 2;
const TIMES = { patience: 100, quick: 400 };

/**
 * An understudy in a thread of its own, which begins again as more is found.
 * @param script the program's own, which calls `beUnderstudy` in a thread
 * @param stdin what has been read from standard input by then
 */
export function understudyInThread(script: URL, given: Given, stdin: () => Uint8Array | undefined): Understudy {
    let worker: Worker | undefined, ready: Performance | undefined, searches: readonly KnownAnswers[] = [];
    let state: 'idle' | 'waiting' | 'at work' | 'ended' = 'idle', isNews = false, begun = 0;
    const wait = (ms: number): void => {
        state = 'waiting';
        setTimeout(() => { if (state === 'waiting') begin(); }, ms).unref();
    };
    const begin = (): void => {
        state = isNews ? 'at work' : 'idle';
        if (!isNews) return;
        isNews = false;
        begun = performance.now();
        worker ??= started();
        worker.postMessage({ searches, stdin: stdin() } satisfies Asked);
    };
    const started = (): Worker => {
        const thread = new Worker(script, { workerData: given }).on('error', end).on('message', (answered: Answered) => {
            if (state !== 'at work') return;
            if (answered === 'cannot') return end();
            ready = answered;
            wait(REST * (performance.now() - begun));
        });
        thread.unref();
        return thread;
    };
    const end = (): void => {
        state = 'ended';
        void worker?.terminate();
    };
    return {
        ...TIMES,
        learn(known) {
            searches = known;
            isNews = true;
            if (state === 'idle') begin();
        },
        get ready() { return ready; },
        end,
    };
}

/** What the thread does: the command, each time with what is known by then. */
export function beUnderstudy(): void {
    const { argv, cwd } = workerData as Given, kept = {};
    parentPort!.on('message', ({ searches, stdin }: Asked) => {
        const { world, acts } = rehearsal({ cwd, disk: nodeFiles, kept, readStdin: () => Promise.resolve(stdin ?? new Uint8Array()) }, searches);
        const silent = { isTTY: false, write: () => true } as never;
        const surroundings = { ...world, stdout: silent, stderr: silent, env: process.env, serveEditor: () => Promise.reject(new Error('no editor has an understudy')) };
        run(argv, surroundings).then(code => ({ acts, code }), () => 'cannot' as const).then(answered => { parentPort!.postMessage(answered satisfies Answered); }, () => {});
    });
}
