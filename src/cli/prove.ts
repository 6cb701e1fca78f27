import { prove } from '../cutting/solve/prove.ts';
import type { Answer, Questions } from '../cutting/questions.ts';
import type { BoardPlan } from '../cutting/model.ts';
import type { LinearSolver } from '../cutting/solve/solver.ts';
import { solverBy } from '../worker/highs.ts';

/** Steps for all stocks of a house together: a second or two. Counted and not timed, so that the same files give the same plan. */
export const USUAL_STEPS = 2_000_000;

/**
 * The plan after looking for cheaper ones, stock by stock, and for the proof that there is none. A stock that is done early
 * leaves its steps to those after it. The solver is loaded only here, since it is large.
 */
export async function lookCloser({ asked, answered }: Questions, steps: number): Promise<BoardPlan> {
    const solver = await (loading ??= loadSolver());
    const answers = new Map<number, Answer>();
    let left = steps;
    for (const [i, { problem, layouts }] of asked.entries()) {
        const search = prove(problem, layouts, solver, Math.floor(left / (asked.length - i)));
        let step = search.next();
        while (!step.done) step = search.next();
        answers.set(i, step.value);
        left -= step.value.spent;
    }
    return answered(answers);
}

let loading: Promise<LinearSolver> | undefined;

/** It lies beside the program as WebAssembly. */
async function loadSolver(): Promise<LinearSolver> {
    const { default: load } = await import('highs');
    return solverBy(await load());
}
