import type { Highs, Model } from 'highs';
import type { LinearAnswer, LinearColumn, LinearProgram, LinearSolver, RowLimits } from '../cutting/solve/solver.ts';

/** HiGHS as the solver of linear and integer programs. Without threads and with a fixed seed: the same program, the same answer. */
export function solverBy(highs: Highs): LinearSolver {
    return {
        program: rows => new HighsProgram(highs, rows),
        wholeNumbers(rows, columns, { nodes, step, work: most }) {
            if (stepsToBegin(columns) > most) return { finished: false, work: 0 };
            const model = highs.createModel(dataOf(highs, rows, columns, true));
            try {
                model.options.set({
                    output_flag: false, random_seed: 1, mip_max_nodes: nodes, mip_max_stall_nodes: nodes, mip_rel_gap: 0, mip_abs_gap: step * 0.999,
                    // what they find is found before, by dives
                    mip_heuristic_run_feasibility_jump: false, mip_heuristic_run_rins: false, mip_heuristic_run_rens: false,
                });
                const entries = columns.reduce((sum, column) => sum + column.entries.length, 0), each = PIVOT * rows.length * Math.sqrt(entries);
                let turns = 0, isOver = false;
                const spent = (pivots: number): number =>
                    STARTED + Math.min(turns, ROOT_TURNS) * (TURN + TURN_EACH * entries) + pivots * each;
                // asked between the parts of the search, always at the same places
                model.run({ [highs.constants.callbackType.mipInterrupt](event) {
                    turns++;
                    if (isOver ||= spent(Number(event.data.mip_total_lp_iterations ?? 0)) > most) event.interrupt();
                } });
                const status = model.getModelStatus();
                const found = figure(model, 'primal_solution_status') === FEASIBLE;
                return {
                    values: found ? Array.from(model.getSolution().colValue, Math.round) : undefined,
                    finished: status === OPTIMAL || status === INFEASIBLE,
                    work: spent(figure(model, 'simplex_iteration_count')),
                };
            } finally {
                model.dispose();
            }
        },
    };
}

/**
 * Steps of effort that a program of whole numbers takes, as measured on those of all kinds of jobs (within a factor of two, most of them): to be set
 * up; before it branches, round after round of cuts, each by all that stands in the program; and by its pivots, by how large the
 * program is and how full.
 */
const STARTED = 5000, TURN = 6000, TURN_EACH = 9, PIVOT = 0.9;
/** So many turns are rounds of cuts at the most; those after them are branches, whose pivots tell what they take. */
const ROOT_TURNS = 30;
/** What it is sure to take, which is asked before it is begun: to be simplified, for which columns are looked at by twos. */
function stepsToBegin(columns: readonly LinearColumn[]): number {
    return STARTED + 0.14 * columns.length ** 2;
}
const OPTIMAL = 7;
const INFEASIBLE = 8;
const FEASIBLE = 2;

/** HiGHS throws for every figure where it ended before its search began. */
function figure(model: Model, name: 'primal_solution_status' | 'simplex_iteration_count'): number {
    try {
        return Number(model.info.get(name));
    } catch {
        return 0;
    }
}

class HighsProgram implements LinearProgram {
    private readonly model: Model;
    private readonly rows: number;
    private isFirst = true;

    constructor(private readonly highs: Highs, rows: readonly RowLimits[]) {
        this.rows = rows.length;
        this.model = highs.createModel(dataOf(highs, rows, [], false));
        this.model.options.set({ output_flag: false, presolve: 'off', solver: 'simplex', simplex_strategy: DUAL, random_seed: 1 });
    }

    add(columns: readonly LinearColumn[]): void {
        if (columns.length === 0) return;
        this.model.addCols({
            cost: Float64Array.from(columns, c => c.cost), lower: new Float64Array(columns.length),
            upper: new Float64Array(columns.length).fill(this.highs.infinity), matrix: matrixOf(this.rows, columns),
        });
    }

    limit(row: number, { least, most }: RowLimits): void {
        this.model.changeRowBounds(row, least, finite(this.highs, most));
        // what was optimal is so still but for the row: the dual method goes on from there
        this.model.options.set('simplex_strategy', DUAL);
        this.isFirst = true;
    }

    solve(): LinearAnswer | undefined {
        this.model.run();
        if (this.isFirst) this.model.options.set('simplex_strategy', PRIMAL); // columns are added from now on: feasible stays feasible
        this.isFirst = false;
        if (this.model.getModelStatus() !== OPTIMAL) return undefined;
        const { colValue, rowDual } = this.model.getSolution();
        return { objective: this.model.getObjectiveValue(), values: colValue, duals: rowDual, pivots: figure(this.model, 'simplex_iteration_count') };
    }

    dispose(): void {
        this.model.dispose();
    }
}
const DUAL = 1;
const PRIMAL = 4;

function dataOf(highs: Highs, rows: readonly RowLimits[], columns: readonly LinearColumn[], whole: boolean) {
    return {
        numCols: columns.length, numRows: rows.length,
        colCost: Float64Array.from(columns, c => c.cost), colLower: Float64Array.from(columns, c => c.least ?? 0),
        colUpper: Float64Array.from(columns, c => finite(highs, c.most ?? Infinity)),
        rowLower: Float64Array.from(rows, r => (r.least === -Infinity ? -highs.infinity : r.least)),
        rowUpper: Float64Array.from(rows, r => finite(highs, r.most)),
        matrix: matrixOf(rows.length, columns),
        ...(whole ? { integrality: new Int32Array(columns.length).fill(1) } : {}),
    };
}

/** The entries column by column (compressed sparse columns). */
function matrixOf(rows: number, columns: readonly LinearColumn[]) {
    const starts = new Int32Array(columns.length + 1);
    columns.forEach((column, j) => { starts[j + 1] = starts[j]! + column.entries.length; });
    const entries = columns.flatMap(column => column.entries);
    return {
        format: 'csc' as const, numRows: rows, numCols: columns.length, starts,
        indices: Int32Array.from(entries, ([row]) => row), values: Float64Array.from(entries, ([, value]) => value),
    };
}

function finite(highs: Highs, value: number): number {
    return value === Infinity ? highs.infinity : value;
}
