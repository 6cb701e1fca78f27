import type { Answer, Asked } from './questions.ts';
import { prove } from './solve/prove.ts';
import type { LinearSolver } from './solve/solver.ts';

/** Steps for all stocks of a house together: about a second. Counted and not timed, so that the same files give the same plan. */
export const USUAL_STEPS = 8_000_000;

/** What was found for the question of an index; `isLast`: nothing more comes for it. */
export interface Found { readonly index: number; readonly answer: Answer; readonly isLast: boolean }

/**
 * Looks for cheaper plans, stock by stock, and for the proof that there is none. A stock that is done early leaves its steps to
 * those after it. Yields whenever more is known, so that it can be shown, or stopped. The same questions, the same answers.
 */
export function* lookCloser(asked: readonly Asked[], solver: LinearSolver, steps: number): Generator<Found, void> {
    let left = steps;
    // what has few lengths is soon done, and leaves the more to what has many
    const order = [...asked.entries()].sort(([i, a], [j, b]) => a.problem.items.length - b.problem.items.length || i - j);
    for (const [place, [index, { problem, layouts }]] of order.entries()) {
        const search = prove(problem, layouts, solver, Math.floor(left / (order.length - place)));
        let step = search.next();
        for (; !step.done; step = search.next()) yield { index, answer: answerOf(step.value), isLast: false };
        yield { index, answer: answerOf(step.value), isLast: true };
        left -= step.value.spent;
    }
}

function answerOf({ layouts, bound }: Answer): Answer {
    return { layouts, bound };
}
