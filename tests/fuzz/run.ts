import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { CeilingHouse } from '../takeoff/look-at-ceiling.ts';
import { randomCeilings } from '../takeoff/random-ceilings.ts';
import { FuzzedHouse } from './look.ts';
import { inputs, textOf, type Input } from './mutations.ts';
import { makeReports } from './reports.ts';
import { playSession, sessions, type Session } from './sessions.ts';
import { Swarm } from './swarm.ts';
import { corpusOf, type Corpus } from './texts.ts';

/**
 * How often the dearer looks are taken of a long text: at one in so many. All of them are read, linked, checked and formatted alone,
 * beside the files that they import; `whole`: what depends on them is looked at too, in a house that is kept warm.
 */
const EVERY = { whole: 10, closely: 20, cold: 80, reports: 400 };
/** Of a file of 20 000 characters, in milliseconds of the processor. */
const MOST_MS = 1000;
const BATCH = 1000;

const NOTHING = { failed: false, counterexample: null, errorInstance: null };

export interface Asked {
    readonly root: string; readonly count: number; readonly seed: number; readonly sessions: number;
    /** Random ceilings, see tests/takeoff/random-ceilings.ts. */
    readonly ceilings: number;
    /** One text in so many is a whole file; the others are short, see swarm.ts. */
    readonly oneLongIn: number;
    /** Fails what takes too long; not to be asked for where other threads work beside this one. */
    readonly timed: boolean;
    say(words: string): void;
}
export interface Outcome {
    readonly short: number; readonly long: number; readonly reports: number; readonly sessions: number; readonly ceilings: number;
    readonly failures: number; readonly worstMs: number;
}

/**
 * So many mutilated texts, and so many sessions with the server between them. Each failure is shrunk, printed with the seed
 * that brings it about, kept in a file, and counted; the rest goes on.
 */
export async function fuzz({ root, count, seed, sessions: wantedSessions, ceilings, oneLongIn, timed, say }: Asked): Promise<Outcome> {
    const corpus = corpusOf(root);
    // without rooms and jobs nothing but the text itself is looked at anew
    const alone: Corpus = { ...corpus, house: Object.fromEntries(Object.entries(corpus.house).filter(([, text]) => !/^(?:room|job|labor|bid|alternate)\b/m.test(text))) };
    let whole = await FuzzedHouse.open(corpus), apart = await FuzzedHouse.open(alone), swarm = await Swarm.open(alone);
    let short = 0, long = 0, reports = 0, played = 0, failures = 0, worstMs = 0;

    const look = async (input: Input): Promise<void> => {
        const text = textOf(input, corpus.seeds), { path } = corpus.seeds[input.seed]!;
        const n = long++;
        const taken = async (): Promise<number> => {
            const before = process.cpuUsage();
            await apart.look(path, text, { closely: n % EVERY.closely === 0, cold: false });
            const { user, system } = process.cpuUsage(before);
            return (user + system) / 1000;
        };
        let ms = await taken();
        // what else the machine did is no matter of the text: it is as slow a second time, or is not
        if (ms > MOST_MS) { await apart.look(path, '', { closely: false, cold: false }); ms = Math.min(ms, await taken()); }
        worstMs = Math.max(worstMs, ms);
        if (timed && ms > MOST_MS) throw new Error(`It took ${Math.round(ms)} ms.`);
        if (n % EVERY.whole === 0) await whole.look(path, text, { closely: n % EVERY.closely === 0, cold: n % EVERY.cold === 0 });
        if (n % EVERY.reports === EVERY.reports - 1) reports += await makeReports(corpus, path, text);
    };
    const keep = (what: 'text' | 'session' | 'ceiling', text: string, batch: number, error: unknown): void => {
        failures++;
        const folder = join(root, '.cache/fuzz'), name = join(folder, `${what}-${batch}-${failures}.${what === 'session' ? 'json' : 'coffer'}`);
        mkdirSync(folder, { recursive: true });
        writeFileSync(name, text);
        say(`seed ${batch}: ${String(error instanceof Error ? error.message : error).slice(0, 2000)}\n  kept in ${name}`);
    };

    for (let batch = seed; short + long < count || played < wantedSessions; batch++) {
        const open = Math.min(BATCH, count - short - long), files = Math.ceil(open / oneLongIn);
        if (open > files) {
            const broken = await ended(swarm.fly(open - files, batch), `the short texts of seed ${batch}`);
            short += open - files;
            if (broken) {
                keep('text', broken.text, batch, broken.why);
                swarm = await Swarm.open(alone);
            }
        }
        const before = long;
        const looking = fc.asyncProperty(inputs(corpus.seeds.length), look);
        const { failed, counterexample, errorInstance } = open <= 0
            ? NOTHING
            : await ended(fc.check(looking, { seed: batch, numRuns: files, endOnFailure: false }), `the files of seed ${batch}`);
        long = open <= 0 ? long : before + files;                   // shrinking looks too
        if (failed && counterexample) {
            keep('text', textOf(counterexample[0], corpus.seeds), batch, errorInstance);
            [whole, apart] = [await FuzzedHouse.open(corpus), await FuzzedHouse.open(alone)];
        }
        const wanted = short + long >= count ? Math.min(wantedSessions, played + 20) : Math.floor(wantedSessions * (short + long) / count);
        if (played < wanted) {
            const playing = fc.check(fc.asyncProperty(sessions(corpus), playSession), { seed: batch, numRuns: wanted - played });
            const result = await ended(playing, `the sessions of seed ${batch}`);
            played = wanted;
            if (result.failed && result.counterexample) keep('session', JSON.stringify(result.counterexample[0] satisfies Session, undefined, 1), batch, result.errorInstance);
        }
        if ((batch - seed) % 10 === 9) say(`${short + long} texts, ${reports} reports, ${played} sessions, ${failures} failures, worst ${Math.round(worstMs)} ms`);
    }
    for (let from = 0, batch = seed; from < ceilings; from += BATCH, batch++) {
        const house = await CeilingHouse.open(), numRuns = Math.min(BATCH, ceilings - from);
        const looked = fc.check(fc.asyncProperty(randomCeilings, async made => { await house.look(made); }), { seed: batch, numRuns });
        const { failed, counterexample, errorInstance } = await ended(looked, `the ceilings of seed ${batch}`);
        if (failed && counterexample) keep('ceiling', counterexample[0].text, batch, errorInstance);
    }
    return { short, long, reports, sessions: played, ceilings, failures, worstMs };
}

/** Far longer than a thousand of anything takes on a machine that does much else. */
const PATIENCE_MS = 60 * 60_000;

/** What nobody will ever answer would end the program without a word, as soon as there is nothing else to wait for: the clock waits, and says what it was. */
async function ended<T>(work: Promise<T>, what: string): Promise<T> {
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<never>((_, failed) => { timer = setTimeout(() => { failed(new Error(`${what} came to no end.`)); }, PATIENCE_MS); });
    return Promise.race([work, late]).finally(() => { clearTimeout(timer); });
}
