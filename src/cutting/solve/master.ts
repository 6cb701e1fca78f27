import type { Counts, SectionCount } from './bound.ts';
import { keyOf, type Column, type Weighted } from './columns.ts';
import { STEPS, type Effort } from './effort.ts';
import { sectionsFrom } from './layouts.ts';
import type { Prices } from './pricing.ts';
import type { CuttingProblem } from './problem.ts';
import type { LinearColumn, LinearProgram, LinearSolver, RowLimits } from './solver.ts';

export interface MasterAnswer {
    readonly objective: number;
    readonly prices: Prices;
    readonly used: readonly Weighted[];
    /** How many boards of each kind, in parts. */
    readonly boards: readonly number[];
    /** True where some pieces are not cut: the columns there are do not suffice. */
    readonly lacking: boolean;
}

/**
 * The linear program behind the plan: every piece is cut often enough, and as many boards of each kind are bought as allowed; columns
 * are used in parts. Its duals say what each piece is worth.
 */
export class Master {
    private readonly program: LinearProgram;
    private readonly rows: MasterRows;
    private readonly limits: RowLimits[];
    private readonly columns: (Column | undefined)[] = [];
    private readonly known = new Set<string>();
    private readonly waiting: LinearColumn[] = [];

    constructor(private readonly problem: CuttingProblem, demand: readonly number[], counts: Counts, solver: LinearSolver, private readonly effort: Effort) {
        effort.spent += STEPS.program;
        this.rows = new MasterRows(problem, demand, counts.sections);
        this.limits = this.rows.limits(demand, counts);
        this.program = solver.program(this.limits);
        // a piece that is left out costs more than any board: it is only for the start, before there are columns
        const missing = 50 * Math.max(1, ...problem.boards.map(kind => kind.cost));
        for (const row of this.rows.itemRows) if (row >= 0) this.push(undefined, { cost: missing, entries: [[row, 1]] });
        // boards that have to be bought and are not needed
        problem.boards.forEach(({ cost }, board) => this.push(undefined, { cost, entries: [[this.rows.boardRow(board), 1]] }));
        counts.sections?.forEach((_, s) => this.push(undefined, { cost: missing, entries: [[this.rows.sectionRow(s), 1]] }));
    }

    /** False where the column is there already. */
    add(column: Column): boolean {
        const key = keyOf(column);
        this.effort.spent += STEPS.cut;
        if (this.known.has(key)) return false;
        this.known.add(key);
        this.push(column, { cost: this.problem.boards[column.board]!.cost, entries: this.rows.entries(column) });
        return true;
    }

    limit({ least, most, sections = [] }: Counts): void {
        this.problem.boards.forEach((_, board) => this.limitRow(this.rows.boardRow(board), { least: least[board]!, most: most[board]! }));
        sections.forEach((limits, s) => this.limitRow(this.rows.sectionRow(s), limits));
    }

    private limitRow(row: number, limits: RowLimits): void {
        const before = this.limits[row]!;
        if (before.least === limits.least && before.most === limits.most) return;
        this.effort.spent += STEPS.limited;
        this.limits[row] = limits;
        this.program.limit(row, limits);
    }

    solve(): MasterAnswer | undefined {
        this.program.add(this.waiting.splice(0));
        const answer = this.program.solve();
        if (!answer) return undefined;
        const size = this.rows.count + this.columns.length;
        this.effort.spent += STEPS.solution + STEPS.column * this.columns.length + answer.pivots * (STEPS.pivot + STEPS.pivotEach * size);
        const used: Weighted[] = [];
        const boards = this.problem.boards.map(() => 0);
        let lacking = false;
        this.columns.forEach((column, j) => {
            const times = answer.values[j]!;
            if (!(times > 1e-9)) return;
            if (column) {
                used.push({ column, times });
                boards[column.board]! += times;
            } else if (j < this.rows.itemCount || j >= this.rows.itemCount + boards.length) lacking ||= times > 1e-6;
            else boards[j - this.rows.itemCount]! += times;
        });
        return { objective: answer.objective, prices: this.rows.prices(answer.duals), used, boards, lacking };
    }

    allColumns(): Column[] {
        return this.columns.filter(column => column !== undefined);
    }

    dispose(): void {
        this.program.dispose();
    }

    private push(column: Column | undefined, linear: LinearColumn): void {
        this.effort.spent += STEPS.newColumn;
        this.columns.push(column);
        this.waiting.push(linear);
    }
}

/** Which row is whose: wanted items first, then kinds of board, then sections of which there may be only so many. */
export class MasterRows {
    readonly itemRows: readonly number[];
    readonly itemCount: number;
    readonly count: number;

    constructor(private readonly problem: CuttingProblem, demand: readonly number[], private readonly sections: readonly SectionCount[] = []) {
        let rows = 0;
        this.itemRows = demand.map(count => (count > 0 ? rows++ : -1));
        this.itemCount = rows;
        this.count = rows + problem.boards.length + sections.length;
    }

    boardRow(board: number): number {
        return this.itemCount + board;
    }

    sectionRow(section: number): number {
        return this.itemCount + this.problem.boards.length + section;
    }

    limits(demand: readonly number[], { least, most }: Counts): { least: number; most: number }[] {
        return [
            ...demand.filter(count => count > 0).map(count => ({ least: count, most: Infinity })),
            ...least.map((few, board) => ({ least: few, most: most[board]! })),
            ...this.sections,
        ];
    }

    entries(column: Column): [row: number, value: number][] {
        const { board, gives } = column;
        const entries = gives.flatMap(([item, count]): [number, number][] => (this.itemRows[item]! >= 0 ? [[this.itemRows[item]!, count]] : []));
        const sections = this.sections.flatMap(({ from }, s): [number, number][] => {
            const count = sectionsFrom(this.problem, column, from);
            return count > 0 ? [[this.sectionRow(s), count]] : [];
        });
        return [...entries, [this.boardRow(board), 1], ...sections];
    }

    prices(duals: ArrayLike<number>): Prices {
        return {
            items: this.itemRows.map(row => (row >= 0 ? Math.max(0, duals[row]!) : 0)),
            boards: this.problem.boards.map(({ cost }, board) => cost - duals[this.boardRow(board)]!),
            sections: this.sections.map(({ from }, s) => ({ from, worth: duals[this.sectionRow(s)]! })),
        };
    }
}
