import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { FuzzedHouse } from './look.ts';
import { inputs, textOf, type Input } from './mutations.ts';
import { makeReports } from './reports.ts';
import { playSession, sessions, type Session } from './sessions.ts';
import { corpusOf } from './texts.ts';

/** How often the dearer looks are taken: one input in so many. */
const EVERY = { closely: 4, cold: 60, reports: 400 };
/** Of a file of 20 000 characters, in milliseconds of the processor; the margin is for machines that do more than this. */
const MOST_MS = 3000;
const BATCH = 500;

export interface Outcome { readonly inputs: number; readonly reports: number; readonly sessions: number; readonly failures: number; readonly worstMs: number; readonly worst: string }

/**
 * So many mutilated texts, and a session with the server for every `perSession` of them. Each failure is shrunk, printed with the seed
 * that brings it about, kept in a file, and counted; the rest goes on.
 */
export async function fuzz({ root, count, seed, perSession, timed, say }: { root: string; count: number; seed: number; perSession: number; timed: boolean; say(words: string): void }): Promise<Outcome> {
    const corpus = corpusOf(root);
    let house = await FuzzedHouse.open(corpus);
    let done = 0, reports = 0, played = 0, failures = 0, worstMs = 0, worst = '';

    const look = async (input: Input): Promise<void> => {
        const text = textOf(input, corpus.seeds), { path } = corpus.seeds[input.seed]!;
        const n = done++;
        const before = process.cpuUsage();
        await house.look(path, text, { closely: n % EVERY.closely === 0, cold: n % EVERY.cold === 0 });
        const { user, system } = process.cpuUsage(before), ms = (user + system) / 1000;
        if (n % EVERY.cold !== 0 && ms > worstMs) { worstMs = ms; worst = text; }
        if (timed && n % EVERY.cold !== 0 && ms > MOST_MS) throw new Error(`It took ${Math.round(ms)} ms.`);
        if (n % EVERY.reports === EVERY.reports - 1) reports += await makeReports(corpus, path, text);
    };
    const keep = (what: string, text: string, batch: number, error: unknown): void => {
        failures++;
        const folder = join(root, '.cache/fuzz'), name = join(folder, `${what}-${batch}-${failures}.${what === 'text' ? 'coffer' : 'json'}`);
        mkdirSync(folder, { recursive: true });
        writeFileSync(name, text);
        say(`seed ${batch}: ${String(error instanceof Error ? error.message : error).slice(0, 2000)}\n  kept in ${name}`);
    };

    for (let batch = seed; done < count; batch++) {
        const { failed, counterexample, errorInstance } = await fc.check(fc.asyncProperty(inputs(corpus.seeds.length), look), { seed: batch, numRuns: Math.min(BATCH, count - done), endOnFailure: false });
        if (failed && counterexample) {
            keep('text', textOf(counterexample[0], corpus.seeds), batch, errorInstance);
            house = await FuzzedHouse.open(corpus);
        }
        const wanted = Math.floor(done / perSession);
        if (played < wanted) {
            const result = await fc.check(fc.asyncProperty(sessions(corpus), playSession), { seed: batch, numRuns: wanted - played });
            played += result.numRuns;
            if (result.failed && result.counterexample) keep('session', JSON.stringify(result.counterexample[0] satisfies Session, undefined, 1), batch, result.errorInstance);
        }
        if ((batch - seed) % 20 === 19) say(`${done} inputs, ${reports} reports, ${played} sessions, ${failures} failures, worst ${Math.round(worstMs)} ms`);
    }
    return { inputs: done, reports, sessions: played, failures, worstMs, worst };
}
