import type { Counts } from './bound.ts';
import { costOfColumn, isRip, layoutsFrom, type Column } from './columns.ts';
import type { Effort } from './effort.ts';
import { trimmed } from './layouts.ts';
import { MasterRows } from './master.ts';
import { laneCount, type CuttingProblem, type Layout } from './problem.ts';
import type { LinearSolver } from './solver.ts';

export interface Picked {
    readonly layouts?: Layout[];
    /** True where no plan is cheaper than this one, of those made of these columns; without one: there is none. */
    readonly finished: boolean;
}

/** The cheapest plan that can be put together from the columns with so many boards. */
export function pickPlan(problem: CuttingProblem, columns: readonly Column[], counts: Counts, solver: LinearSolver, effort: Effort, nodes: number, step: number): Picked {
    const demand = problem.items.map(item => item.count);
    const rows = new MasterRows(problem, demand);
    const linear = columns.map(column => ({ cost: costOfColumn(problem, column), entries: rows.entries(column), most: mostOf(column, demand, counts) }));
    const answer = solver.wholeNumbers(rows.limits(demand, counts), linear, { nodes, step });
    effort.spent += effortToPick(problem, columns);
    if (!answer.values) return { finished: answer.finished };
    const used = columns.map((column, j) => ({ column, times: answer.values![j]! })).filter(({ times }) => times > 0);
    const layouts = layoutsFrom(used).map(({ layout, times }) => ({ ...layout, times }));
    return { layouts: trimmed(problem, layouts, demand), finished: answer.finished };
}
/** What a search takes, as far as it can be known before: it grows with the columns and with the rows they stand in. */
export function effortToPick(problem: CuttingProblem, columns: readonly Column[]): number {
    return PICKING * columns.length * (problem.items.length + problem.boards.length * laneCount(problem));
}
const PICKING = 150;

function mostOf(column: Column, demand: readonly number[], { most }: Counts): number {
    if (isRip(column)) return most[column.board]!;
    const needed = Math.max(...column.picks.map(([item, count]) => Math.ceil(demand[item]! / count)));
    return column.lane === 0 ? Math.min(needed, most[column.board]!) : needed;
}
