import { setFlagsFromString } from 'node:v8';
import { parentPort } from 'node:worker_threads';
import { lookCloser } from '../cutting/look-closer.ts';
import type { LinearSolver } from '../cutting/solve/solver.ts';
import type { ToBoardsWorker } from './messages.ts';
import { solverBy } from './highs.ts';

// The solver is compiled as it runs, and what runs often once more, for speed: that takes longer than all searches of a house, unless only what runs
// very often is. What it computes is the same.
setFlagsFromString('--wasm-tiering-budget=200000000');

// Looks for cheaper boards in a thread of its own and tells whatever it finds; who is no longer interested ends it.
const port = parentPort!;
let loading: Promise<LinearSolver> | undefined;
port.on('message', (message: ToBoardsWorker) => {
    void look(message).catch((error: unknown) => port.postMessage({ failed: String(error) }));
});

async function look({ asked, steps }: ToBoardsWorker): Promise<void> {
    const solver = await (loading ??= import('highs').then(async ({ default: load }) => solverBy(await load())));
    for (const found of lookCloser(asked, solver, steps)) port.postMessage({ found });
}
