import type { Answer, Asked } from './questions.ts';
import { columnsFor } from './solve/alike.ts';
import type { Column } from './solve/columns.ts';
import { faultOf } from './solve/layouts.ts';
import { costOfLayouts, type CuttingProblem } from './solve/problem.ts';
import { prove } from './solve/prove.ts';
import type { LinearSolver } from './solve/solver.ts';

/** Steps for all stocks of a house together: five seconds or so. Counted and not timed, so that the same files give the same plan. */
export const USUAL_STEPS = 26_000_000;

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
    const looker = new Looker(solver);
    yield* looker.look(order.filter(([, { isBeside }]) => !isBeside), steps);
    yield* looker.look(order.filter(([, { isBeside }]) => isBeside), Math.floor(steps * BESIDE));
}
/** What is compared with a job takes no step from it, and all of it together so much more. */
const BESIDE = 1 / 2;

const WITHOUT = 1 / 3;

class Looker {
    private readonly answers = new Map<number, Answer>();
    /** Ways to cut that were good, the last first: they are so for what is like it too. */
    private readonly learned: { readonly problem: CuttingProblem; readonly columns: readonly Column[] }[] = [];

    constructor(private readonly solver: LinearSolver) {}

    *look(order: readonly (readonly [number, Asked])[], steps: number): Generator<Found, void> {
        let left = steps;
        // beside the same with sections, which comes to no more, what is without is looked into less
        const shares = order.map(([, { withSections }]) => (withSections === undefined ? 1 : WITHOUT));
        for (const [place, [index, { problem, layouts: first, withSections = -1 }]] of order.entries()) {
            const known = this.answers.get(withSections);
            if (known && holdsWithout(problem, known)) {
                yield { index, answer: known, isLast: true };
                continue;
            }
            const layouts = known && isPlanOf(problem, known) && costOfLayouts(problem, known.layouts) < costOfLayouts(problem, first) ? known.layouts : first;
            const share = shares[place]! / shares.slice(place).reduce((a, b) => a + b, 0);
            const search = prove(problem, layouts, this.solver, Math.floor(left * share), this.columnsFor(problem));
            let step = search.next();
            for (; !step.done; step = search.next()) yield { index, answer: answerOf(step.value), isLast: false };
            const answer = answerOf(step.value);
            this.answers.set(index, answer);
            this.learned.unshift({ problem, columns: step.value.columns });
            yield { index, answer, isLast: true };
            left -= step.value.spent;
        }
    }

    private columnsFor(problem: CuttingProblem): Column[] {
        for (const { problem: like, columns } of this.learned) {
            const own = columnsFor(problem, like, columns);
            if (own.length > 0) return own;
        }
        return [];
    }
}

/** Where the cheapest plan of those with sections has none, it is the cheapest of those without. */
function holdsWithout(problem: CuttingProblem, { layouts, bound }: Answer): boolean {
    return isPlanOf(problem, { layouts, bound }) && costOfLayouts(problem, layouts) <= bound;
}

function isPlanOf(problem: CuttingProblem, { layouts }: Answer): boolean {
    return layouts.every(({ sections }) => !sections) && faultOf(problem, layouts) === undefined;
}

function answerOf({ layouts, bound }: Answer): Answer {
    return { layouts, bound };
}
