import { columnOf, wholeColumn, type Column } from './columns.ts';
import type { Effort } from './effort.ts';
import { Knapsack } from './knapsack.ts';
import { sectionsFrom } from './layouts.ts';
import { type CuttingProblem } from './problem.ts';
import { SectionTables, type SectionWorth } from './sections.ts';
import { Table } from './table.ts';

/** What everything is worth at some point of the search: items by index, boards by kind. */
export interface Prices {
    readonly items: ArrayLike<number>;
    readonly boards: readonly number[];
    /** Sections, as far as their number is limited. */
    readonly sections: readonly SectionWorth[];
}

/** What a way to cut is worth. */
export function worthOfColumn(problem: CuttingProblem, column: Column, { items, sections }: Prices): number {
    const given = column.gives.reduce((sum, [item, count]) => sum + items[item]! * count, 0);
    return sections.reduce((sum, { from, worth }) => (worth === 0 ? sum : sum + worth * sectionsFrom(problem, column, from)), given);
}

export interface Offer {
    /** Ways to cut that are worth more than their board. */
    readonly columns: Column[];
    /** What the content of a board of each kind is worth at most. */
    readonly worth: number[];
    /** False where a search was given up: then `worth` may be too low. */
    readonly exact: boolean;
}

/** Finds ways to cut boards that are worth more than the boards, at given prices of the pieces. */
export class Pricing {
    private readonly sizes: readonly number[];
    private readonly among: readonly number[];
    private readonly longest: number;
    private readonly knapsack: Knapsack;
    private readonly sections: SectionTables | undefined;
    private table: Table | undefined;

    constructor(private readonly problem: CuttingProblem, private readonly counts: readonly number[], private readonly effort: Effort) {
        this.sizes = problem.items.map(item => item.size);
        this.longest = Math.max(...problem.boards.map(kind => kind.capacity));
        this.among = problem.items.flatMap((item, i) => (counts[i]! > 0 && item.size <= this.longest ? [i] : []));
        this.knapsack = new Knapsack(this.sizes, effort);
        this.sections = problem.strips.length > 0 ? new SectionTables(problem, counts, effort) : undefined;
    }

    /**
     * @param usable which kinds of board may be bought at all
     * @param part how much of the price a content has to be worth: a little less than 1 also finds what is nearly worth it
     * @param budget of each search
     */
    offer(prices: Prices, usable: readonly boolean[], part: number, budget: number, keep: number): Offer {
        if (this.sections) return this.offerOfSections(this.sections, prices, usable, part);
        const columns: Column[] = [];
        const worth = this.problem.boards.map(() => 0);
        let exact = true;
        if (this.among.length === 0) return { columns, worth, exact };
        this.knapsack.worth(prices.items, this.among);
        this.problem.boards.forEach(({ capacity }, board) => {
            if (!usable[board]) return;
            const filling = this.knapsack.fill(capacity, this.counts, Math.max(0, prices.boards[board]! * part), budget, keep);
            exact &&= filling.exact;
            worth[board] = filling.value;
            columns.push(...filling.picks.map(picks => wholeColumn(board, picks)));
        });
        return { columns, worth, exact };
    }

    /** The same by tables, where the searches were given up. Undefined where the tables would be too large. */
    offerByTables(prices: Prices, usable: readonly boolean[]): Offer | undefined {
        if (this.sections) return undefined;
        const best = this.tableOf(prices.items, true);
        if (!best) return undefined;
        const columns: Column[] = [];
        const worth = this.problem.boards.map(({ capacity }, board) => {
            if (!usable[board]) return 0;
            const value = best[capacity]!;
            if (value > prices.boards[board]!) columns.push(wholeColumn(board, this.table!.picksAt(capacity)));
            return value;
        });
        if (this.among.length > MANY_LENGTHS) columns.push(...this.columnsByItem(best, prices, usable));
        return { columns, worth, exact: true };
    }

    /**
     * What the best content of a board of each kind is worth, exactly where the values are whole numbers below 2^53 (of boards with very
     * many places for a cut or widths: what it is worth at most). Undefined where the tables would be too large.
     */
    worthOfBoards(values: ArrayLike<number>, sections: readonly SectionWorth[] = []): number[] | undefined {
        if (this.sections) return this.sections.isSmall ? this.sections.worth(values, 'at most', sections) : undefined;
        const best = this.tableOf(values, false);
        return best && this.problem.boards.map(({ capacity }) => best[capacity]!);
    }

    private offerOfSections(sections: SectionTables, prices: Prices, usable: readonly boolean[], part: number): Offer {
        if (!sections.isSmall) return { columns: [], worth: this.problem.boards.map(() => 0), exact: false };
        const worth = sections.worth(prices.items, 'cut', prices.sections);
        const asTold = prices.sections.some(section => section.worth !== 0);
        const columns = worth.flatMap((value, board) => {
            const least = Math.max(0, prices.boards[board]! * part);
            if (!usable[board] || value <= least) return [];
            const column = columnOf(sections.content(board, 'as wanted', asTold));
            const isWorthIt = worthOfColumn(this.problem, column, prices) > least;
            // what nobody finds room for may still be worth it where some pieces are cut too often
            return isWorthIt ? [column] : [column, columnOf(sections.content(board, 'too often', asTold))];
        });
        return { columns: columns.filter(({ gives }) => gives.length > 0), worth, exact: sections.isExact };
    }

    /** For each item the best content that has it, where that is worth its board: of many lengths one column a board brings little at a time. */
    private columnsByItem(best: Float64Array, prices: Prices, usable: readonly boolean[]): Column[] {
        const { boards } = this.problem;
        return this.among.flatMap(item => {
            let most = 0, chosen = -1;
            boards.forEach(({ capacity }, board) => {
                const room = capacity - this.sizes[item]!;
                const gain = usable[board] && room >= 0 ? prices.items[item]! + best[room]! - prices.boards[board]! : 0;
                if (gain > most) { most = gain; chosen = board; }
            });
            if (chosen < 0) return [];
            const counts = new Map(this.table!.picksAt(boards[chosen]!.capacity - this.sizes[item]!));
            const count = (counts.get(item) ?? 0) + 1;
            return count > this.counts[item]! ? [] : [wholeColumn(chosen, [...counts.set(item, count)].sort(([a], [b]) => a - b))];
        });
    }

    private tableOf(values: ArrayLike<number>, traced: boolean): Float64Array | undefined {
        this.table ??= new Table(this.sizes, this.counts, this.among, this.longest, this.effort);
        return this.table.cells > MOST_CELLS ? undefined : this.table.fill(values, traced);
    }
}
/** Of more lengths than this, tables are sooner done than searches. */
export const MANY_LENGTHS = 150;
/** 150 MB of table is as much as is asked of a machine. */
const MOST_CELLS = 150_000_000;
