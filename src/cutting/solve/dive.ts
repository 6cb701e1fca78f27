import { allCounts, type Counts } from './bound.ts';
import { columnOf, type Column, type Weighted } from './columns.ts';
import { STEPS, type Effort } from './effort.ts';
import { generate } from './generate.ts';
import { cheapestFor, gathered, picksOf, tidied, wantedOf } from './layouts.ts';
import { Master } from './master.ts';
import { Pricing } from './pricing.ts';
import { costOfLayouts, type CuttingProblem, type Layout } from './problem.ts';
import { sequentialPlan } from './sequential.ts';
import type { LinearSolver } from './solver.ts';

export interface DiveStart {
    /** A solution in parts: what is dived from. */
    readonly used: readonly Weighted[];
    readonly columns: readonly Column[];
    /** What the pieces are worth in it. */
    readonly values: ArrayLike<number>;
}
interface DiveOptions {
    /** Boards there are of each kind. */
    readonly free: readonly number[];
    /** Only plans cheaper than this are wanted. */
    readonly below: number;
    /** A plan this cheap ends it. */
    readonly target: number;
    /** Changes which boards are settled first: 0 takes them as they come. */
    readonly variant: number;
}

/**
 * A plan from a solution in parts: whole boards of it are settled, the rest is solved again in parts, and so on to the end; at
 * every step the rest is also planned board after board, which is often as good and then ends it. Undefined where nothing
 * cheaper was found.
 */
export function dive(
    problem: CuttingProblem, start: DiveStart, solver: LinearSolver, effort: Effort, { free, below, target, variant }: DiveOptions,
): Layout[] | undefined {
    const settled = new Settled(problem, free, effort);
    const jitter = jitterOf(variant);
    let best: Layout[] | undefined;
    let bestCost = below;
    let current = start;
    while (!effort.isSpent) {
        effort.spent += current.used.length * STEPS.look;
        if (!settled.settle(current.used, jitter) || settled.cost >= bestCost) break;
        if (settled.isDone) return gathered(problem, settled.layouts);
        const rest = sequentialPlan(problem, settled.left, settled.free, worthOf(problem, current.values), effort,
            { rounds: 3, budget: 1000, target: target - settled.cost, below: bestCost - settled.cost });
        if (rest) {
            best = gathered(problem, [...settled.layouts, ...rest]);
            bestCost = costOfLayouts(problem, best);
            if (bestCost <= target) break;
        }
        const next = resolve(problem, settled, current.columns, solver, effort, bestCost - settled.cost);
        if (!next) break;
        current = next;
    }
    return best;
}

/** The rest in parts, or undefined where it cannot become cheap enough. */
function resolve(
    problem: CuttingProblem, { left, free }: Settled, columns: readonly Column[], solver: LinearSolver, effort: Effort, below: number,
): DiveStart | undefined {
    const every = allCounts(problem, Infinity);
    const counts: Counts = { least: every.least, most: every.most.map((most, k) => Math.min(most, free[k]!)) };
    const master = new Master(problem, left, counts, solver, effort);
    try {
        for (const column of columns) {
            effort.spent += STEPS.cut / 2;
            const part = remaining(problem, column, left, free);
            if (part) master.add(part);
        }
        const made = generate(problem, left, master, new Pricing(problem, left, effort), counts, effort);
        if (!made || made.answer.lacking || made.bound >= below) return undefined;
        return { used: made.answer.used, columns: master.allColumns(), values: made.answer.prices.items };
    } finally {
        master.dispose();
    }
}

/** What of a column is of use for the pieces that are left. */
export function remaining(problem: CuttingProblem, column: Column, left: readonly number[], free: readonly number[]): Column | undefined {
    if (!(free[column.board]! > 0)) return undefined;
    if (column.gives.every(([item, count]) => left[item]! >= count)) return column;
    const strips = column.strips.map(strip => ({
        ...strip, picks: strip.picks.flatMap(([item, count]): [number, number][] => (left[item]! > 0 ? [[item, Math.min(count, left[item]!)]] : [])),
    }));
    const part = columnOf(tidied(problem, { ...column, strips }));
    return part.gives.length > 0 ? part : undefined;
}

/** Worth by the last solution; pieces it gives none are worth a trifle, so that they are planned too. */
function worthOf({ items }: CuttingProblem, values: ArrayLike<number>): number[] {
    return items.map((item, i) => (values[i]! > 0 ? values[i]! : item.size * 1e-6));
}

/** The boards settled so far, and what is left to plan. */
export class Settled {
    readonly layouts: Layout[] = [];
    readonly left: number[];
    readonly free: number[];
    cost = 0;
    private pieces: number;

    constructor(private readonly problem: CuttingProblem, free: readonly number[], private readonly effort: Effort) {
        this.left = problem.items.map(item => item.count);
        this.free = [...free];
        this.pieces = this.left.reduce((a, b) => a + b, 0);
    }

    get isDone(): boolean {
        return this.pieces === 0;
    }

    /** Settles what is there in whole; where nothing is, the board that is nearest to it and others that are near. Says whether there was any. */
    settle(parts: readonly Weighted[], jitter: () => number): boolean {
        if (this.settleWhole(parts)) return true;
        const nearest = parts.map(({ column, times }) => ({ column, part: times - Math.floor(times), rank: times - Math.floor(times) + jitter() }))
            .sort((a, b) => b.rank - a.rank);
        const most = Math.max(1, parts.length * 0.15);
        let taken = 0;
        for (const { column, part } of nearest) {
            if (taken > 0 && (part < NEAR || taken >= most || !column.gives.every(([item, count]) => this.left[item]! >= count))) continue;
            if (this.take(column)) taken++;
        }
        return taken > 0;
    }

    /** Settles what is there in whole, and says whether there was any. */
    settleWhole(parts: readonly Weighted[]): boolean {
        const before = this.pieces;
        for (const { column, times } of parts)
            for (let n = Math.floor(times + 1e-6); n > 0; n--) if (!this.take(column)) break;
        return this.pieces < before;
    }

    private take(column: Column): boolean {
        if (!(this.free[column.board]! > 0)) return false;
        this.effort.spent += 3 * STEPS.cut;
        const { gives: _, ...wanted } = wantedOf(column, this.left);
        const cut = tidied(this.problem, wanted);
        if (cut.strips.length === 0) return false;
        const board = cheapestFor(this.problem, cut, this.free);
        this.layouts.push({ ...cut, board, times: 1 });
        this.free[board]! -= 1;
        this.cost += this.problem.boards[board]!.cost;
        this.pieces -= picksOf(cut).reduce((sum, [, count]) => sum + count, 0);
        return true;
    }
}
/** A board that is there to this part is settled together with the nearest. */
const NEAR = 0.8;

/** The same sequence of small numbers for the same variant: none is drawn by chance. */
export function jitterOf(variant: number): () => number {
    let state = variant * 7919;
    return () => {
        if (variant === 0) return 0;
        state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
        return 0.35 * state / 2 ** 32;
    };
}
