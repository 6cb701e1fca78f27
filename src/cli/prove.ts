import { lookCloser, USUAL_STEPS } from '../cutting/look-closer.ts';
import type { BoardPlan } from '../cutting/model.ts';
import type { Answer, Questions } from '../cutting/questions.ts';
import type { LinearSolver } from '../cutting/solve/solver.ts';
import { solverBy } from '../worker/highs.ts';

/** The plan after looking for cheaper ones and for the proof that there are none. */
export async function proved({ asked, answered }: Questions): Promise<BoardPlan> {
    if (asked.length === 0) return answered(new Map());
    const answers = new Map<number, Answer>();
    for (const { index, answer } of lookCloser(asked, await (loading ??= loadSolver()), USUAL_STEPS)) answers.set(index, answer);
    return answered(answers);
}

/** The plan that is made at once. */
export function atOnce({ first }: Questions): Promise<BoardPlan> {
    return Promise.resolve(first);
}

let loading: Promise<LinearSolver> | undefined;

/** It lies beside the program as WebAssembly, and is loaded only where it is needed, since it is large. */
async function loadSolver(): Promise<LinearSolver> {
    const { default: load } = await import('highs');
    return solverBy(await load());
}
