import { plannedAnew } from './anew.ts';
import { coarsened } from './coarse.ts';
import type { Effort } from './effort.ts';
import { cheapestFor, gathered, tidied } from './layouts.ts';
import { sequentialPlan } from './sequential.ts';
import { pieceCount, widthShares, type CuttingProblem, type Layout } from './problem.ts';

/**
 * A good plan at once: a few rounds of planning board after board, fewer the more there is to plan, then some of the boards anew. Undefined
 * where some piece fits no board that is left.
 */
export function quickPlan(problem: CuttingProblem, effort: Effort): Layout[] | undefined {
    if (problem.items.length === 0) return [];
    if (problem.items.length > MOST_LENGTHS) {
        const coarse = coarsened(problem, MOST_LENGTHS / 2);
        const layouts = coarse.problem.items.length <= MOST_LENGTHS ? quickPlan(coarse.problem, effort) : undefined;
        if (layouts) return gathered(problem, shrunk(problem, coarse.refined(layouts)));
    }
    const { items, boards } = problem;
    const longest = Math.max(...boards.map(kind => kind.capacity));
    // long pieces are worth a little more than their length, so that they are not what is left at the end
    const shares = widthShares(problem);
    const values = items.map((item, i) => item.size * shares[i]! * (1 + 0.1 * item.size / longest));
    const free = boards.map(kind => kind.available ?? Infinity);
    const demand = items.map(item => item.count);
    const large = items.length > 150 || pieceCount(problem) > 1500;
    const plan = sequentialPlan(problem, demand, free, values, effort, { rounds: large ? 3 : 8, budget: large ? 200 : 1000 });
    return plan && plannedAnew(problem, plan, values, effort, ANEW);
}
/** Steps to plan some boards of it anew: some milliseconds. */
const ANEW = 60_000;
/** More lengths than this are planned by groups of lengths. */
const MOST_LENGTHS = 300;

/** Each board exchanged for the cheapest that holds its pieces: they are a little shorter than they were planned. */
export function shrunk(problem: CuttingProblem, layouts: readonly Layout[]): Layout[] {
    const free = problem.boards.map(kind => kind.available ?? Infinity);
    for (const { board } of layouts) free[board]! -= 1;
    return layouts.map(each => {
        const layout = tidied(problem, each);
        const board = cheapestFor(problem, layout, free);
        free[layout.board]! += 1;
        free[board]! -= 1;
        return { ...layout, board };
    });
}
