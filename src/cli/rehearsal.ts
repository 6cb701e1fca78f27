import type { BoardProver } from '../cutting/board-prover.ts';
import type { Answer } from '../cutting/questions.ts';
import { paint } from '../report/look.ts';
import type { Printed } from '../text/fit.ts';
import { UsageError, type ExitCode } from './exit-code.ts';
import type { HeldFiles } from './held-files.ts';
import type { Terminal } from './terminal.ts';
import type { World } from './world.ts';

/** What a command says, prints and writes, in its order. */
export type Act = { readonly say: string } | { readonly result: Printed } | { readonly write: HeldFiles };
/** All of a command, before any of it is done. `answers`: how many the searches had found when it was begun. */
export interface Performance { readonly acts: readonly Act[]; readonly code: ExitCode; readonly answers: number }
/** What a search has found for its questions so far. */
type KnownAnswers = readonly { readonly index: number; readonly answer: Answer; readonly isLast: boolean }[];

/** Most searches are over before; in milliseconds. */
const PATIENCE = 100;
/** Between two rehearsals the thread rests so many times as long as one took: it is to hear that the search is over. */
const REST = 3;

/**
 * Does a command. While it looks for cheaper boards the thread has nothing to do: meanwhile the whole command is done over again, and again when
 * more is found, each time as if the search had been stopped just then, with nothing shown or written. Who stops the search then gets what is
 * ready, however long it took to make.
 * @param ready told what the command would do by now; without it nothing is rehearsed
 */
export async function rehearsing(world: World, ready: ((performance: Performance) => void) | undefined, job: Job): Promise<ExitCode> {
    if (ready === undefined) return job(world);
    const searches: { index: number; answer: Answer; isLast: boolean }[][] = [];
    let answers = 0, going = 0, isNews = false, isIdle = true, isOver = false;
    const wait = (ms: number): void => {
        isIdle = false;
        setTimeout(() => void rehearse(), ms).unref();
    };
    const news = (): void => {
        isNews = true;
        if (isIdle) wait(PATIENCE);
    };
    const rehearse = async (): Promise<void> => {
        isIdle = true;
        if (!isNews || isOver || going === 0 || world.stopped.aborted) return;
        isIdle = isNews = false;
        const began = performance.now(), known = answers, performed = await rehearsed(live, searches, job);
        if (isOver) return;
        if (performed) ready({ ...performed, answers: known });
        wait(REST * (performance.now() - began));
    };
    const live: World = {
        ...world, kept: world.kept ?? {},
        prover: {
            prove(asked, found) {
                const own: (typeof searches)[number] = [];
                let open = asked.length, isGoing = true;
                const over = (): void => {
                    if (isGoing) going--;
                    isGoing = false;
                };
                searches.push(own);
                going++;
                news();
                const stop = world.prover.prove(asked, (index, answer, isLast) => {
                    const before = own.findIndex(each => each.index === index);
                    own.splice(before < 0 ? own.length : before, 1, { index, answer, isLast });
                    answers++;
                    if (isLast && --open === 0) over();
                    news();
                    found(index, answer, isLast);
                });
                return () => {
                    over();
                    stop();
                };
            },
        },
    };
    try {
        return await job(live);
    } finally {
        isOver = true;
    }
}

type Job = (world: World) => ExitCode | Promise<ExitCode>;

/** Undefined where the command ends in an error. */
async function rehearsed(world: World, searches: readonly KnownAnswers[], job: Job): Promise<Omit<Performance, 'answers'> | undefined> {
    const { elsewhere, acts } = rehearsal(world, searches);
    try {
        return { code: await job(elsewhere), acts };
    } catch (error) {
        if (!(error instanceof UsageError)) throw error;
        return undefined;
    }
}

/** The world of a rehearsal: nothing is shown or written, what the searches have found is known, and nothing more is found. */
function rehearsal(world: Omit<World, 'terminal' | 'prover' | 'stopped' | 'hold' | 'replace'>, searches: readonly KnownAnswers[]): { readonly elsewhere: World; readonly acts: readonly Act[] } {
    const acts: Act[] = [], stop = new AbortController();
    return {
        acts,
        elsewhere: {
            ...world, terminal: notingTerminal(act => { acts.push(act); }), hold: write => { acts.push({ write }); },
            replace: () => Promise.reject(new Error('a command that rewrites texts is not rehearsed')),
            prover: knowing(searches, () => { stop.abort(); }), stopped: stop.signal,
        },
    };
}

/** Shows nothing, and tells what would be shown. */
export function notingTerminal(note: (act: Act) => void, progress: Terminal['progress'] = () => {}): Terminal {
    return { result: text => { note({ result: text }); }, say: line => { note({ say: line }); }, progress, paint };
}

/** Finds at once what is known of each search, in their order, and nothing else. A search with something open is stopped, and so are all after it. */
function knowing(searches: readonly KnownAnswers[], stop: () => void): BoardProver {
    let next = 0;
    return {
        prove(asked, found) {
            const known = searches[next++] ?? [];
            queueMicrotask(() => {
                known.forEach(({ index, answer, isLast }) => { found(index, answer, isLast); });
                if (known.filter(({ isLast }) => isLast).length < asked.length) stop();
            });
            return () => {};
        },
    };
}

/** What is left of a performance where these acts are done; undefined where it begins otherwise: the files may have changed meanwhile. */
export function leftOf({ acts }: Pick<Performance, 'acts'>, done: readonly Act[]): readonly Act[] | undefined {
    return JSON.stringify(acts.slice(0, done.length)) === JSON.stringify(done) ? acts.slice(done.length) : undefined;
}

