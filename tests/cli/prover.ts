import highs from 'highs';
import type { BoardProver } from '../../src/cutting/board-prover.ts';
import { lookCloser } from '../../src/cutting/look-closer.ts';
import { solverBy } from '../../src/worker/highs.ts';

/** Fewer steps than a command takes: what is made of the answers is tried here, not how good they are. */
const STEPS = 3_000_000;

/** The search for cheaper boards in this very thread. It breathes between what it finds, so that it can be ended there. */
export const proverHere: BoardProver = {
    prove(asked, found) {
        let ended = false;
        void (async () => {
            const solver = solverBy(await (loading ??= highs()));
            for (const { index, answer, isLast } of lookCloser(asked, solver, STEPS)) {
                found(index, answer, isLast);
                await new Promise(setImmediate);
                if (ended) return;
            }
        })();
        return () => { ended = true; };
    },
};
let loading: ReturnType<typeof highs> | undefined;
