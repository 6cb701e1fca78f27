import { createHash } from 'node:crypto';
import { serialize } from 'node:v8';
import highs from 'highs';
import type { BoardProver } from '../../src/cutting/board-prover.ts';
import { lookCloser, type Found } from '../../src/cutting/look-closer.ts';
import { solverBy } from '../../src/worker/highs.ts';

/** Fewer steps than a command takes: what is made of the answers is tried here, not how good they are. */
const STEPS = 3_000_000;

/** By what is asked: the same questions have the same answers, and many commands ask the same. Each asks in its own words, or it is looked for anew. */
const known = new Map<string, Iterable<Found>>();

/** The search for cheaper boards in this very thread. It breathes between what it finds, so that it can be ended there. */
export const proverHere: BoardProver = {
    prove(asked, found) {
        let ended = false;
        void (async () => {
            const solver = solverBy(await (loading ??= highs())), key = createHash('sha256').update(serialize(asked)).digest('hex');
            if (!known.has(key)) known.set(key, remembered(lookCloser(asked, solver, STEPS)));
            for (const { index, answer, isLast } of known.get(key)!) {
                found(index, answer, isLast);
                await new Promise(setImmediate);
                if (ended) return;
            }
        })();
        return () => { ended = true; };
    },
};

/** What is found once is found again by whoever comes later, or meanwhile: the search goes on where somebody wants more than is known. */
function remembered(search: Iterator<Found>): Iterable<Found> {
    const found: Found[] = [];
    return {
        *[Symbol.iterator]() {
            for (let i = 0; ; i++) {
                if (i === found.length) {
                    const next = search.next();
                    if (next.done) return;
                    found.push(next.value);
                }
                yield structuredClone(found[i]!);
            }
        },
    };
}
let loading: ReturnType<typeof highs> | undefined;
