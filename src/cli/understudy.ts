import type { BoardProver } from '../cutting/board-prover.ts';
import type { Answer } from '../cutting/questions.ts';
import { paint } from '../report/look.ts';
import type { Printed } from '../text/fit.ts';
import { UsageError, worst, type ExitCode } from './exit-code.ts';
import type { HeldFiles } from './held-files.ts';
import { OutputFolder } from './output-folder.ts';
import type { Terminal } from './terminal.ts';
import type { World } from './world.ts';

/** What a command says, prints and writes, in its order, before any of it is done. */
type Act = { readonly say: string } | { readonly result: Printed } | { readonly write: HeldFiles };
export interface Performance { readonly acts: readonly Act[]; readonly code: ExitCode }
/** What a search has found for its questions so far. */
export type KnownAnswers = readonly { readonly index: number; readonly answer: Answer; readonly isLast: boolean }[];

/**
 * Does the same command over again elsewhere while it looks for cheaper boards, each time as if the search had been stopped just then:
 * what takes longer than anybody who stops the program wants to wait is then done already.
 */
export interface Understudy {
    /** A search that is over before needs nothing beforehand, in milliseconds. */
    readonly patience: number;
    /** What takes no longer is done when the search is stopped, with all that is known by then; in milliseconds. */
    readonly quick: number;
    /** `searches`: what each search of the command has found so far. */
    learn(searches: readonly KnownAnswers[]): void;
    /** The last that is ready. */
    readonly ready: Performance | undefined;
    end(): void;
}

/**
 * Does a command. While it looks for cheaper boards, what takes its time afterwards is done beforehand, since who stops the search does not
 * want to wait for it: once here, as if the search had been stopped at its very beginning, and again and again by the understudy.
 * A signal during that first time is heard when it is over, and finds it done.
 */
export async function withUnderstudy(world: World, understudy: Understudy | undefined, job: Job): Promise<ExitCode> {
    if (understudy === undefined) return job(world);
    const done: Act[] = [], searches: { index: number; answer: Answer; isLast: boolean }[][] = [];
    let first: Rehearsed | undefined, foundSince = false;
    const told = (): void => { if (first !== undefined && !first.isQuick) understudy.learn(searches); };
    let endEarly = (_code: ExitCode): void => {};
    const early = new Promise<ExitCode>(resolve => { endEarly = resolve; });
    const { prover, interrupts, terminal } = world;
    const live: World = {
        ...world,
        kept: world.kept ?? {},
        terminal: noted(terminal, done),
        prover: {
            prove(asked, found) {
                const own: (typeof searches)[number] = [];
                searches.push(own);
                told();
                return prover.prove(asked, (index, answer, isLast) => {
                    const before = own.findIndex(each => each.index === index);
                    own.splice(before < 0 ? own.length : before, 1, { index, answer, isLast });
                    foundSince = true;
                    told();
                    found(index, answer, isLast);
                });
            },
        },
        interrupts: {
            stopped: interrupts.stopped,
            late: interrupts.late,
            tidily: work => interrupts.tidily(work),
            stoppable: async work => {
                if (interrupts.stopped.aborted) return work(interrupts.stopped);
                const before = searches.length;
                let isSearch = false;
                const result = await interrupts.stoppable(async stop => {
                    const going = work(stop);
                    isSearch = searches.length > before;
                    if (isSearch && first === undefined && !await isOverBy(going, understudy.patience) && !stop.aborted) {
                        foundSince = false;
                        first = await rehearse(live, searches, job, understudy.quick);
                        told();
                    }
                    return going;
                });
                if (!isSearch || !interrupts.stopped.aborted) return result;
                understudy.end();
                // what was done at the beginning is the best only where nothing was found since
                const atFirst = foundSince ? undefined : first?.ready;
                const ready = first?.isQuick === true ? undefined : understudy.ready ?? atFirst;
                if (ready === undefined || !begins(ready.acts, done)) return result;
                endEarly(await perform({ ...ready, acts: ready.acts.slice(done.length) }, world));
                return new Promise(() => {});
            },
        },
    };
    try {
        return await Promise.race([early, job(live)]);
    } finally {
        understudy.end();
    }
}

type Job = (world: World) => ExitCode | Promise<ExitCode>;
/** `ready`: undefined where the command ends in an error. */
interface Rehearsed { readonly isQuick: boolean; readonly ready: Performance | undefined }

async function rehearse({ cwd, disk, kept, readStdin }: World, searches: readonly KnownAnswers[], job: Job, quick: number): Promise<Rehearsed> {
    const began = performance.now(), { world, acts } = rehearsal({ cwd, disk, ...kept && { kept }, readStdin }, searches);
    try {
        const code = await job(world);
        return { isQuick: performance.now() - began <= quick, ready: { acts, code } };
    } catch (error) {
        if (!(error instanceof UsageError)) throw error;
        return { isQuick: true, ready: undefined };
    }
}

function isOverBy(work: Promise<unknown>, ms: number): Promise<boolean> {
    return new Promise((done, failed) => {
        const waiting = setTimeout(() => { done(false); }, ms);
        work.then(() => { clearTimeout(waiting); done(true); }, failed);
    });
}

/** The world of an understudy: nothing is shown or written, what the searches of the command have found is known, and nothing more is. */
export function rehearsal(world: Omit<World, 'terminal' | 'prover' | 'interrupts' | 'hold'>, searches: readonly KnownAnswers[]): { readonly world: World; readonly acts: readonly Act[] } {
    const acts: Act[] = [];
    const silent: Terminal = { result: () => {}, say: () => {}, progress: () => {}, paint };
    return {
        acts,
        world: {
            ...world, terminal: noted(silent, acts), prover: knowing(searches), hold: write => { acts.push({ write }); },
            interrupts: {
                stopped: new AbortController().signal,
                late: new AbortController().signal,
                tidily: work => work(),
                stoppable: work => {
                    const stop = new AbortController(), result = work(stop.signal);
                    // after what is known has been said
                    setImmediate(() => { stop.abort(); });
                    return result;
                },
            },
        },
    };
}

/** Finds at once what is known of each search, in their order, and nothing else. */
function knowing(searches: readonly KnownAnswers[]): BoardProver {
    let next = 0;
    return {
        prove(_asked, found) {
            const known = searches[next++] ?? [];
            queueMicrotask(() => { known.forEach(({ index, answer, isLast }) => { found(index, answer, isLast); }); });
            return () => {};
        },
    };
}

function noted(terminal: Terminal, acts: Act[]): Terminal {
    return {
        ...terminal,
        result: text => { acts.push({ result: text }); terminal.result(text); },
        say: line => { acts.push({ say: line }); terminal.say(line); },
    };
}

/** Whether what has been said and printed already is what the other one begins with: the files may have changed meanwhile. */
function begins(acts: readonly Act[], done: readonly Act[]): boolean {
    return JSON.stringify(acts.slice(0, done.length)) === JSON.stringify(done);
}

async function perform({ acts, code }: Performance, world: World): Promise<ExitCode> {
    const folders = new Map<string, OutputFolder>();
    let ended = code;
    world.terminal.progress('');
    for (const act of acts) {
        if ('say' in act) world.terminal.say(act.say);
        else if ('result' in act) world.terminal.result(act.result);
        else {
            const { options, files, from } = act.write, folder = folders.get(options.out) ?? new OutputFolder(options, world);
            folders.set(options.out, folder);
            await folder.write(files, from);
            ended = worst(ended, folder.code);
        }
    }
    return ended;
}
