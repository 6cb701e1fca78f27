import type { Effort } from './effort.ts';
import { sequentialPlan } from './sequential.ts';
import { pieceCount, type CuttingProblem, type Layout } from './problem.ts';

/**
 * A good plan at once: a few rounds of planning board after board, fewer the more there is to plan. Undefined where some piece
 * fits no board that is left.
 */
export function quickPlan(problem: CuttingProblem, effort: Effort): Layout[] | undefined {
    if (problem.items.length === 0) return [];
    const { items, boards } = problem;
    const longest = Math.max(...boards.map(kind => kind.capacity));
    // long pieces are worth a little more than their length, so that they are not what is left at the end
    const values = items.map(item => item.size * (1 + 0.1 * item.size / longest));
    const free = boards.map(kind => kind.available ?? Infinity);
    const demand = items.map(item => item.count);
    const large = items.length > 150 || pieceCount(problem) > 1500;
    return sequentialPlan(problem, demand, free, values, effort, { rounds: large ? 1 : 8, budget: large ? 200 : 1000 });
}
