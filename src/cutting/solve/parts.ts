import { columnOf, columnsOf, keyOf, type Column, type Weighted } from './columns.ts';
import type { Effort } from './effort.ts';
import { tidied } from './layouts.ts';
import type { CuttingProblem, Layout } from './problem.ts';
import { Filler } from './sequential.ts';
import { Simplex } from './simplex.ts';

/** A solution in parts: how often boards are cut in which way, and what the pieces are worth in it. */
export interface Parts {
    readonly used: readonly Weighted[];
    /** All ways to cut that were found on the way. */
    readonly columns: readonly Column[];
    readonly values: readonly number[];
    readonly cost: number;
}

/**
 * About the best solution in parts, at once and without a solver: ways to cut are looked for by searches that end early, so nothing is proved by it.
 * @param start a plan for all of it
 * @param steps how many are spent at the most, besides the last pass
 */
export function partsAtOnce(problem: CuttingProblem, start: readonly Layout[], effort: Effort, steps: number): Parts {
    const { items, boards } = problem, last = effort.spent + steps;
    const counted = boards.flatMap(({ available }, k) => (available === null ? [] : [k])), rowOf = new Map(counted.map((k, r) => [k, items.length + r]));
    const demand = items.map(({ count }) => count);
    const program = new Simplex(demand, counted.map(k => boards[k]!.available!), 50 * Math.max(1, ...boards.map(({ cost }) => cost)), effort);
    const columns: Column[] = [], known = new Set<string>();
    const add = (column: Column): boolean => {
        const key = keyOf(column);
        if (known.has(key)) return false;
        known.add(key);
        columns.push(column);
        const row = rowOf.get(column.board);
        program.add({ cost: boards[column.board]!.cost, entries: row === undefined ? column.gives : [...column.gives, [row, 1]] });
        return true;
    };
    for (const column of columnsOf(start)) add(column);
    const worth = [...demand], there = boards.map(({ available }) => available ?? Infinity);
    const filler = new Filler(problem, demand, worth, effort, BUDGET);
    for (;;) {
        const { values, duals } = program.solve(MOST_PIVOTS);
        items.forEach((_, i) => { worth[i] = Math.max(0, duals[i]!); });
        let isMore = false;
        // what a board of a kind costs, with what it is worth that it is there
        const price = (board: number): number => (boards[board]!.cost - (duals[rowOf.get(board) ?? -1] ?? 0)) * (1 + HAIR);
        if (effort.spent < last)
            filler.contents(there, kind => price(boards.indexOf(kind)), ({ cut, value }) => {
                if (value > price(cut.board)) isMore = add(columnOf(tidied(problem, cut))) || isMore;
            });
        if (isMore) continue;
        const used = columns.flatMap((column, j) => (values[j]! > 1e-9 ? [{ column, times: values[j]! }] : []));
        return { used, columns, values: worth, cost: used.reduce((sum, { column, times }) => sum + times * boards[column.board]!.cost, 0) };
    }
}
const BUDGET = 200;
const MOST_PIVOTS = 300;
const HAIR = 1e-6;
