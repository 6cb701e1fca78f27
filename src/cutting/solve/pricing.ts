import type { Column } from './columns.ts';
import type { Effort } from './effort.ts';
import { Knapsack, type Filling } from './knapsack.ts';
import { canCut, laneCount, WHOLE, type CuttingProblem, type Picks } from './problem.ts';
import { Table } from './table.ts';

/** What everything is worth at some point of the search: items by index, boards by kind, strips by lane and kind. */
export interface Prices {
    readonly items: ArrayLike<number>;
    readonly boards: readonly number[];
    readonly strips: readonly (readonly number[])[];
}

export interface Offer {
    /** Ways to cut that are worth more than their board or strip. */
    readonly columns: Column[];
    /** What the content of a board of each kind is worth at most. */
    readonly worth: number[];
    /** False where a search was given up: then `worth` may be too low. */
    readonly exact: boolean;
}

/** Finds ways to cut boards that are worth more than the boards, at given prices of the pieces. */
export class Pricing {
    private readonly problem: CuttingProblem;
    private readonly counts: readonly number[];
    private readonly sizes: readonly number[];
    /** By lane: the items that may be cut from it. */
    private readonly among: readonly (readonly number[])[];
    private readonly longest: number;
    private readonly knapsack: Knapsack;
    private readonly ripping: Knapsack;
    private readonly tables: (Table | undefined)[] = [];
    private readonly effort: Effort;

    constructor(problem: CuttingProblem, counts: readonly number[], effort: Effort) {
        this.problem = problem;
        this.counts = counts;
        this.effort = effort;
        this.sizes = problem.items.map(item => item.size);
        this.longest = Math.max(...problem.boards.map(kind => kind.capacity));
        this.among = Array.from({ length: laneCount(problem) }, (_, lane) =>
            problem.items.flatMap((item, i) => (counts[i]! > 0 && item.size <= this.longest && item.lanes.includes(lane) ? [i] : [])));
        this.knapsack = new Knapsack(this.sizes, effort);
        this.ripping = new Knapsack(problem.strips, effort, 0);
    }

    /**
     * @param usable which kinds of board may be bought at all
     * @param part how much of the price a content has to be worth: a little less than 1 also finds what is nearly worth it
     * @param budget of each search
     */
    offer(prices: Prices, usable: readonly boolean[], part: number, budget: number, keep: number): Offer {
        const kinds = this.problem.boards;
        const columns: Column[] = [];
        const stripWorth: number[][] = [];
        const stripPicks: (Picks | undefined)[][] = [];
        const worth = kinds.map(() => 0);
        let exact = true;
        this.among.forEach((among, lane) => {
            if (among.length === 0) return;
            this.knapsack.worth(prices.items, among);
            stripWorth[lane] = [];
            stripPicks[lane] = [];
            kinds.forEach((kind, board) => {
                if (!usable[board] || !canCut(kind, lane)) return;
                const price = lane === WHOLE ? prices.boards[board]! : prices.strips[lane]![board]!;
                const filling = this.knapsack.fill(kind.capacity, this.counts, Math.max(0, price * part), budget, keep);
                exact &&= filling.exact;
                stripWorth[lane]![board] = filling.value;
                stripPicks[lane]![board] = filling.picks.at(-1);
                if (lane === WHOLE) worth[board] = filling.value;
                columns.push(...filling.picks.map(picks => ({ board, lane, picks })));
            });
        });
        const complete = this.rips(prices, usable, part, stripWorth, worth, columns);
        return { columns, worth, exact: exact && complete };
    }

    /** The same by tables, where the searches were given up. Undefined where the tables would be too large. */
    offerByTables(prices: Prices, usable: readonly boolean[]): Offer | undefined {
        const values = this.stripValues(prices.items, true);
        if (!values) return undefined;
        const columns: Column[] = [];
        const worth = this.problem.boards.map(() => 0);
        const stripWorth = values.map(value => this.problem.boards.map(kind => value[kind.capacity]!));
        this.among.forEach((among, lane) => {
            if (among.length === 0) return;
            this.problem.boards.forEach((kind, board) => {
                if (!usable[board] || !canCut(kind, lane)) return;
                const value = stripWorth[lane]![board]!;
                const price = lane === WHOLE ? prices.boards[board]! : prices.strips[lane]![board]!;
                if (lane === WHOLE) worth[board] = value;
                if (value > price) columns.push({ board, lane, picks: this.tables[lane]!.picksAt(kind.capacity) });
            });
        });
        const exact = this.rips(prices, usable, 1, stripWorth, worth, columns);
        return { columns, worth, exact };
    }

    /**
     * What the best content of a board of each kind is worth, exactly where the values are whole numbers below 2^53 (of boards with very
     * many widths: what it is worth at most). Undefined where the tables would be too large.
     */
    worthOfBoards(values: ArrayLike<number>): number[] | undefined {
        const lanes = this.stripValues(values, false);
        if (!lanes) return undefined;
        const stripWorth = lanes.map(value => this.problem.boards.map(kind => value[kind.capacity]!));
        return this.problem.boards.map((kind, board) => {
            const whole = canCut(kind, WHOLE) ? stripWorth[WHOLE]![board]! : 0;
            if (this.problem.strips.length === 0) return whole;
            const { value, exact } = this.ripOf(board, stripWorth, whole);
            return exact ? value : Math.max(value, this.ripAtMost(board, stripWorth));
        });
    }

    /** More than the strips of a board are worth together: as if its whole width were worth what the best strip is by its width. */
    private ripAtMost(board: number, stripWorth: readonly (readonly number[])[]): number {
        const rates = this.problem.strips.map((width, i) => (stripWorth[i + 1]?.[board] ?? 0) / width);
        return Math.ceil(Math.max(...rates) * this.problem.boards[board]!.across * (1 + 1e-12));
    }

    /** By lane, what the best content of a strip of each capacity is worth. */
    private stripValues(values: ArrayLike<number>, traced: boolean): Float64Array[] | undefined {
        const tables = this.among.map((among, lane) => this.tables[lane] ??= new Table(this.sizes, this.counts, among, this.longest, this.effort));
        if (tables.reduce((sum, table) => sum + table.cells, 0) > MOST_CELLS) return undefined;
        return tables.map(table => table.fill(values, traced));
    }

    /** Adds the ways to rip that are worth more than their board, given what a strip of each lane is worth. */
    private rips(
        prices: Prices, usable: readonly boolean[], part: number, stripWorth: readonly (readonly number[])[], worth: number[], columns: Column[],
    ): boolean {
        let complete = true;
        if (this.problem.strips.length === 0) return complete;
        this.problem.boards.forEach((_, board) => {
            if (!usable[board]) return;
            const { value, picks, exact } = this.ripOf(board, stripWorth, Math.max(0, prices.boards[board]! * part));
            complete &&= exact;
            worth[board] = Math.max(worth[board]!, value);
            columns.push(...picks.map(strips => ({ board, strips })));
        });
        return complete;
    }

    /**
     * The strips of a board that are worth most together. Exact where the values are whole numbers, unless there are so many widths that the
     * search is given up.
     */
    private ripOf(board: number, stripWorth: readonly (readonly number[])[], above: number): Filling {
        const { strips, boards } = this.problem;
        const lanes = strips.map((_, i) => i);
        this.ripping.worth(lanes.map(i => stripWorth[i + 1]?.[board] ?? 0), lanes);
        const filling = this.ripping.fill(boards[board]!.across, lanes.map(() => Infinity), above, RIP_BUDGET);
        return { ...filling, picks: filling.picks.map(picks => picks.map(([i, count]): [number, number] => [i + 1, count]).sort(([a], [b]) => a - b)) };
    }
}
const RIP_BUDGET = 200_000;
/** 150 MB of table is as much as is asked of a machine. */
const MOST_CELLS = 150_000_000;
