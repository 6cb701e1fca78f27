import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { FuzzedHouse } from './look.ts';
import { inputs, textOf, type Input } from './mutations.ts';
import { makeReports } from './reports.ts';
import { playSession, sessions, type Session } from './sessions.ts';
import { corpusOf, type Corpus } from './texts.ts';

/**
 * How often the dearer looks are taken: one input in so many. All others are read, linked, checked and formatted alone, beside the files
 * that they import; `whole`: what depends on them is looked at too, in a house that is kept warm.
 */
const EVERY = { whole: 10, closely: 40, cold: 120, reports: 2000 };
/** Of a file of 20 000 characters, in milliseconds of the processor. */
const MOST_MS = 1000;
const BATCH = 500;

const NOTHING = { failed: false, counterexample: null, errorInstance: null };

export interface Outcome { readonly inputs: number; readonly reports: number; readonly sessions: number; readonly failures: number; readonly worstMs: number; readonly worst: string }

/**
 * So many mutilated texts, and so many sessions with the server between them. Each failure is shrunk, printed with the seed
 * that brings it about, kept in a file, and counted; the rest goes on.
 */
export async function fuzz({ root, count, seed, wantedSessions, timed, say }: { root: string; count: number; seed: number; wantedSessions: number; timed: boolean; say(words: string): void }): Promise<Outcome> {
    const corpus = corpusOf(root);
    // without rooms and jobs nothing but the text itself is looked at anew
    const alone: Corpus = { ...corpus, house: Object.fromEntries(Object.entries(corpus.house).filter(([, text]) => !/^(?:room|job|labor|bid|alternate)\b/m.test(text))) };
    let whole = await FuzzedHouse.open(corpus), apart = await FuzzedHouse.open(alone);
    let done = 0, reports = 0, played = 0, failures = 0, worstMs = 0, worst = '';

    const look = async (input: Input): Promise<void> => {
        const text = textOf(input, corpus.seeds), { path } = corpus.seeds[input.seed]!;
        const n = done++;
        const taken = async (): Promise<number> => {
            const before = process.cpuUsage();
            await apart.look(path, text, { closely: n % EVERY.closely === 0, cold: false });
            const { user, system } = process.cpuUsage(before);
            return (user + system) / 1000;
        };
        let ms = await taken();
        // what else the machine did is no matter of the text: it is as slow a second time, or is not
        if (ms > MOST_MS) { await apart.look(path, '', { closely: false, cold: false }); ms = Math.min(ms, await taken()); }
        if (ms > worstMs) { worstMs = ms; worst = text; }
        if (timed && ms > MOST_MS) throw new Error(`It took ${Math.round(ms)} ms.`);
        if (n % EVERY.whole === 0) await whole.look(path, text, { closely: n % EVERY.closely === 0, cold: n % EVERY.cold === 0 });
        if (n % EVERY.reports === EVERY.reports - 1) reports += await makeReports(corpus, path, text);
    };
    const keep = (what: string, text: string, batch: number, error: unknown): void => {
        failures++;
        const folder = join(root, '.cache/fuzz'), name = join(folder, `${what}-${batch}-${failures}.${what === 'text' ? 'coffer' : 'json'}`);
        mkdirSync(folder, { recursive: true });
        writeFileSync(name, text);
        say(`seed ${batch}: ${String(error instanceof Error ? error.message : error).slice(0, 2000)}\n  kept in ${name}`);
    };

    for (let batch = seed; done < count || played < wantedSessions; batch++) {
        const { failed, counterexample, errorInstance } = done >= count ? NOTHING : await fc.check(fc.asyncProperty(inputs(corpus.seeds.length), look), { seed: batch, numRuns: Math.min(BATCH, count - done), endOnFailure: false });
        if (failed && counterexample) {
            keep('text', textOf(counterexample[0], corpus.seeds), batch, errorInstance);
            [whole, apart] = [await FuzzedHouse.open(corpus), await FuzzedHouse.open(alone)];
        }
        const wanted = done >= count ? Math.min(wantedSessions, played + 20) : Math.floor(wantedSessions * done / count);
        if (played < wanted) {
            const result = await fc.check(fc.asyncProperty(sessions(corpus), playSession), { seed: batch, numRuns: wanted - played });
            played += result.numRuns;
            if (result.failed && result.counterexample) keep('session', JSON.stringify(result.counterexample[0] satisfies Session, undefined, 1), batch, result.errorInstance);
        }
        if ((batch - seed) % 20 === 19) say(`${done} inputs, ${reports} reports, ${played} sessions, ${failures} failures, worst ${Math.round(worstMs)} ms`);
    }
    return { inputs: done, reports, sessions: played, failures, worstMs, worst };
}
