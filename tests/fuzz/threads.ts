import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { fileURLToPath } from 'node:url';
import { fuzz, type Asked, type Outcome } from './run.ts';

interface Share {
    readonly root: string; readonly count: number; readonly seed: number; readonly sessions: number; readonly ceilings: number;
    readonly threads: number;
}

/** Each thread has seeds of its own, as if it had been called by itself. */
const SEEDS = 1_000_000;

/** Runs the fuzzing in this thread, or in several beside each other; prints what comes of it and ends the program. The bundle is its own thread's script. */
export async function inThreads(asked: Share): Promise<void> {
    if (!isMainThread) return void parentPort!.postMessage(await fuzz(of(workerData as Share)));
    const { threads } = asked;
    const share = (of: number, i: number): number => Math.floor(of * (i + 1) / threads) - Math.floor(of * i / threads);
    const outcomes = threads === 1 ? [await fuzz(of(asked))] : await Promise.all(Array.from({ length: threads }, (_, i) =>
        inThread({
            ...asked, count: share(asked.count, i), sessions: share(asked.sessions, i), ceilings: share(asked.ceilings, i), seed: asked.seed + i * SEEDS,
        })));
    const sum = (of: (outcome: Outcome) => number): number => outcomes.reduce((total, each) => total + of(each), 0);
    console.log(JSON.stringify({
        short: sum(each => each.short), long: sum(each => each.long), reports: sum(each => each.reports),
        sessions: sum(each => each.sessions), ceilings: sum(each => each.ceilings),
        failures: sum(each => each.failures), worstMs: Math.max(...outcomes.map(each => each.worstMs)),
    } satisfies Outcome));
    process.exit(sum(each => each.failures) > 0 ? 1 : 0);
}

function of({ root, count, seed, sessions, ceilings, threads }: Share): Asked {
    return { root, count, seed, sessions, ceilings, oneLongIn: 50, timed: threads === 1, say: words => { console.log(words); } };
}

function inThread(share: Share): Promise<Outcome> {
    return new Promise((done, failed) => {
        // one that ends without a word has not done its share; after its message nobody asks how it ended
        const ended = (code: number): void => { failed(new Error(`The share from seed ${share.seed} on ended with ${code}, and said nothing.`)); };
        new Worker(fileURLToPath(import.meta.url), { workerData: share }).on('message', done).on('error', failed).on('exit', ended);
    });
}
