/**
 * What is asked of a solver of linear and integer programs. It is handed in, so that the core depends on none; the one in use
 * is in src/worker. All programs are minimized and all columns are at least 0.
 */
export interface LinearSolver {
    /** An empty program with these rows. */
    program(rows: readonly RowLimits[]): LinearProgram;
    /** The cheapest whole numbers of the columns within the rows' limits, as far as found within the budget. */
    wholeNumbers(rows: readonly RowLimits[], columns: readonly LinearColumn[], budget: WholeBudget): WholeAnswer;
}

export interface RowLimits { readonly least: number; readonly most: number }
export interface LinearColumn {
    readonly cost: number;
    readonly entries: readonly (readonly [row: number, value: number])[];
    /** In a program of whole numbers: 0 and no end where nothing is said. */
    readonly least?: number;
    readonly most?: number;
}

/** A program that grows by columns; solving it again starts from where the last solution ended. */
export interface LinearProgram {
    add(columns: readonly LinearColumn[]): void;
    limit(row: number, limits: RowLimits): void;
    /** Undefined where no solution was found. */
    solve(): LinearAnswer | undefined;
    dispose(): void;
}
export interface LinearAnswer {
    readonly objective: number;
    /** By column, in the order they were added. */
    readonly values: ArrayLike<number>;
    /** By row: how much the objective would grow if the row's limit grew by one. */
    readonly duals: ArrayLike<number>;
    readonly pivots: number;
}

interface WholeBudget {
    /** Branches searched. */
    readonly nodes: number;
    /** All objectives are multiples of this: what is not better by as much is no better. */
    readonly step: number;
    /** Steps of effort that the search may take. One that would take more before its first branch is not begun. */
    readonly work: number;
}
interface WholeAnswer {
    /** The best found; undefined where none was. */
    readonly values?: readonly number[];
    /** True where the search came to its end: then the best found is the best, or there is none. */
    readonly finished: boolean;
    /** What the search took, in steps of effort. */
    readonly work: number;
}
