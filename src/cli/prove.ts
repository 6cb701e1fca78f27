import { lookCloser as search } from '../cutting/look-closer.ts';
import type { Answer, Questions } from '../cutting/questions.ts';
import type { BoardPlan } from '../cutting/model.ts';
import type { LinearSolver } from '../cutting/solve/solver.ts';
import { solverBy } from '../worker/highs.ts';

export { USUAL_STEPS } from '../cutting/look-closer.ts';

/** The plan after looking for cheaper ones and for the proof that there is none. The solver is loaded only here, since it is large. */
export async function lookCloser({ asked, answered }: Questions, steps: number): Promise<BoardPlan> {
    const solver = await (loading ??= loadSolver());
    const answers = new Map<number, Answer>();
    for (const { index, answer } of search(asked, solver, steps)) answers.set(index, answer);
    return answered(answers);
}

let loading: Promise<LinearSolver> | undefined;

/** It lies beside the program as WebAssembly. */
async function loadSolver(): Promise<LinearSolver> {
    const { default: load } = await import('highs');
    return solverBy(await load());
}
