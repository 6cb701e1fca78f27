import type { Counts } from './bound.ts';
import type { Column } from './columns.ts';
import { STEPS, type Effort } from './effort.ts';
import { trimmed } from './layouts.ts';
import { MasterRows } from './master.ts';
import type { CuttingProblem, Layout } from './problem.ts';
import type { LinearSolver } from './solver.ts';

interface Picked {
    readonly layouts?: Layout[];
    /** True where no plan is cheaper than this one, of those made of these columns; without one: there is none. */
    readonly finished: boolean;
}

/** The cheapest plan that can be put together from the columns with so many boards, if it costs at most `dearest`. */
export function pickPlan(
    problem: CuttingProblem, columns: readonly Column[], counts: Counts, dearest: number, solver: LinearSolver, effort: Effort,
    { nodes, step, work = Infinity }: { readonly nodes: number; readonly step: number; readonly work?: number },
): Picked {
    const demand = problem.items.map(item => item.count);
    const rows = new MasterRows(problem, demand);
    effort.spent += columns.length * STEPS.cut;
    const linear = columns.map(column => {
        const { cost } = problem.boards[column.board]!;
        return { cost, entries: [...rows.entries(column), ...(cost > 0 ? [[rows.count, cost] as const] : [])], most: mostOf(column, demand, counts) };
    });
    const limits = [...rows.limits(demand, counts), { least: 0, most: dearest }];
    const answer = solver.wholeNumbers(limits, linear, { nodes, step, work: Math.min(effort.left, work) });
    effort.spent += answer.work;
    if (!answer.values) return { finished: answer.finished };
    const layouts = columns.map((column, j) => ({ ...column, times: answer.values![j]! })).filter(({ times }) => times > 0);
    return { layouts: trimmed(problem, layouts, demand), finished: answer.finished };
}

function mostOf({ board, gives }: Column, demand: readonly number[], { most }: Counts): number {
    return Math.min(most[board]!, Math.max(...gives.map(([item, count]) => Math.ceil(demand[item]! / count))));
}
