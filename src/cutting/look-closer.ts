import type { Answer, Asked } from './questions.ts';
import { faultOf } from './solve/layouts.ts';
import { costOfLayouts, type CuttingProblem } from './solve/problem.ts';
import { prove } from './solve/prove.ts';
import type { LinearSolver } from './solve/solver.ts';

/** Steps for all stocks of a house together: five seconds or so. Counted and not timed, so that the same files give the same plan. */
export const USUAL_STEPS = 20_000_000;

/** What was found for the question of an index; `isLast`: nothing more comes for it. */
export interface Found { readonly index: number; readonly answer: Answer; readonly isLast: boolean }

/**
 * Looks for cheaper plans, stock by stock, and for the proof that there is none. A stock that is done early leaves its steps to
 * those after it; what is asked of alternates comes when the job is done with. Yields whenever more is known, so that it can be shown, or
 * stopped. The same questions, the same answers.
 */
export function* lookCloser(asked: readonly Asked[], solver: LinearSolver, steps: number): Generator<Found, void> {
    // what has few lengths is soon done, and leaves the more to what has many
    const order = [...asked.entries()].sort(([i, a], [j, b]) => a.problem.items.length - b.problem.items.length || i - j);
    const answers = new Map<number, Answer>();
    yield* lookInOrder(order.filter(([, { isBeside }]) => !isBeside), solver, steps, answers);
    yield* lookInOrder(order.filter(([, { isBeside }]) => isBeside), solver, Math.floor(steps * BESIDE), answers);
}
/** What is compared with a job takes no step from it, and all of it together so much more. */
const BESIDE = 1 / 2;

function* lookInOrder(
    order: readonly (readonly [number, Asked])[], solver: LinearSolver, steps: number, answers: Map<number, Answer>,
): Generator<Found, void> {
    let left = steps;
    for (const [place, [index, { problem, layouts, withSections = -1 }]] of order.entries()) {
        const known = answers.get(withSections);
        if (known && holdsWithout(problem, known)) {
            yield { index, answer: known, isLast: true };
            continue;
        }
        const search = prove(problem, layouts, solver, Math.floor(left / (order.length - place)));
        let step = search.next();
        for (; !step.done; step = search.next()) yield { index, answer: answerOf(step.value), isLast: false };
        const answer = answerOf(step.value);
        answers.set(index, answer);
        yield { index, answer, isLast: true };
        left -= step.value.spent;
    }
}

/** Where the cheapest plan of those with sections has none, it is the cheapest of those without. */
function holdsWithout(problem: CuttingProblem, { layouts, bound }: Answer): boolean {
    return layouts.every(({ sections }) => !sections) && costOfLayouts(problem, layouts) <= bound && faultOf(problem, layouts) === undefined;
}

function answerOf({ layouts, bound }: Answer): Answer {
    return { layouts, bound };
}
