import { parentPort } from 'node:worker_threads';
import { lookCloser } from '../cutting/look-closer.ts';
import type { LinearSolver } from '../cutting/solve/solver.ts';
import type { ToBoardsWorker } from './messages.ts';
import { solverBy } from './highs.ts';

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
