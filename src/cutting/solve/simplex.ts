import { STEPS, type Effort } from './effort.ts';

interface SimplexColumn { readonly cost: number; readonly entries: readonly (readonly [row: number, value: number])[] }
interface SimplexAnswer {
    /** By column, in the order they were added. */
    readonly values: Float64Array;
    /** By row: how much the least cost would grow if the row's limit grew by one. */
    readonly duals: Float64Array;
}

/**
 * A small linear program: for a plan at once, when no solver is loaded yet, and where it is asked so often that handing it over would take longest.
 * Least cost, columns of at least 0, the rows of pieces at least what is wanted, those of boards at most what there is. The revised simplex method
 * with the inverse of its basis written out (Dantzig's rule; G. B. Dantzig, "Linear Programming and Extensions", 1963, chapters 5 and 9), which goes
 * on from where it stood when columns come in. In floating point: what it tells makes plans, or says what to try, and claims nothing.
 */
export class Simplex {
    /** Row by row, rows of the basis by rows of the program. */
    private readonly inverse: Float64Array[];
    /** By row of the basis the column that is in it; below 0: the piece of the row left out, or the boards that are not used. */
    private readonly basis: Int32Array;
    private readonly held: Float64Array;
    private readonly costs: Float64Array;
    /** The columns one after the other, in plain numbers: they are gone through for every pivot. Column j's entries lie from starts[j] on. */
    private readonly starts = [0];
    private readonly rows: number[] = [];
    private readonly entries: number[] = [];
    private readonly columnCosts: number[] = [];
    private readonly isBasic: boolean[] = [];
    private readonly duals: Float64Array;
    private readonly along: Float64Array;

    /** @param leftOut what a piece costs that is not cut: more than any board, or it would be cheaper to leave it out */
    constructor(private readonly wanted: readonly number[], available: readonly number[], private readonly leftOut: number, private readonly effort: Effort) {
        const limits = [...wanted, ...available], { length } = limits;
        this.inverse = limits.map((_, r) => { const row = new Float64Array(length); row[r] = 1; return row; });
        this.basis = new Int32Array(length).fill(-1);
        this.held = Float64Array.from(limits);
        this.costs = Float64Array.from(limits, (_, r) => (r < wanted.length ? leftOut : 0));
        this.duals = new Float64Array(length);
        this.along = new Float64Array(length);
    }

    add({ cost, entries }: SimplexColumn): void {
        for (const [row, value] of entries) {
            this.rows.push(row);
            this.entries.push(value);
        }
        this.starts.push(this.rows.length);
        this.columnCosts.push(cost);
        this.isBasic.push(false);
    }

    solve(mostPivots: number): SimplexAnswer {
        const { duals, starts, rows: rowOf, entries, columnCosts, isBasic } = this, rows = duals.length, columns = columnCosts.length;
        this.price();
        let pivots = 0;
        for (; pivots < mostPivots; pivots++) {
            let entering = -1, least = -HAIR * this.leftOut, surplus = -1;
            for (let j = 0; j < columns; j++) {
                if (isBasic[j]) continue;
                let reduced = columnCosts[j]!;
                for (let e = starts[j]!; e < starts[j + 1]!; e++) reduced -= duals[rowOf[e]!]! * entries[e]!;
                if (reduced < least) { least = reduced; entering = j; }
            }
            // more cut than is wanted: worth it where a piece would be worth less than nothing; or more boards of a kind left
            for (let row = 0; row < rows; row++) {
                const reduced = row < this.wanted.length ? duals[row]! : -duals[row]!;
                if (reduced < least) { least = reduced; entering = -1; surplus = row; }
            }
            if (entering < 0 && surplus < 0) break;
            const isSurplus = entering < 0;
            if (isSurplus) this.along.forEach((_, r, along) => { along[r] = (surplus < this.wanted.length ? -1 : 1) * this.inverse[r]![surplus]!; });
            else this.follow(entering);
            if (!this.pivot(least, isSurplus ? 0 : columnCosts[entering]!, isSurplus ? SURPLUS - surplus : entering)) break;
        }
        this.effort.spent += STEPS.pass / 20 + pivots * (rows * rows * STEPS.cell + columns * STEPS.look / 12);
        const values = new Float64Array(columns);
        for (let r = 0; r < rows; r++) if (this.basis[r]! >= 0) values[this.basis[r]!] = Math.max(0, this.held[r]!);
        return { values, duals: duals.slice() };
    }

    private price(): void {
        const { duals, costs, inverse } = this;
        duals.fill(0);
        for (let r = 0; r < costs.length; r++) {
            const cost = costs[r]!;
            if (cost === 0) continue;
            const row = inverse[r]!;
            for (let i = 0; i < row.length; i++) duals[i]! += cost * row[i]!;
        }
    }

    /** How the basis changes with each of a column. */
    private follow(column: number): void {
        const { inverse, along, starts, rows, entries } = this, from = starts[column]!, to = starts[column + 1]!;
        for (let r = 0; r < along.length; r++) {
            const row = inverse[r]!;
            let sum = 0;
            for (let e = from; e < to; e++) sum += row[rows[e]!]! * entries[e]!;
            along[r] = sum;
        }
    }

    /**
     * Takes into the basis what changes it by `along`. False where nothing has to leave for it.
     * @param reduced what each of it changes the cost by
     */
    private pivot(reduced: number, cost: number, name: number): boolean {
        const { inverse, held, basis, costs, duals, along } = this, rows = held.length;
        let leaving = -1, least = Infinity;
        for (let r = 0; r < rows; r++) {
            if (!(along[r]! > 1e-9)) continue;
            const ratio = held[r]! / along[r]!;
            // of equal ones the one that is told most exactly
            if (ratio < least - 1e-12 || (ratio <= least + 1e-12 && along[r]! > along[leaving]!)) { least = Math.min(least, ratio); leaving = r; }
        }
        if (leaving < 0) return false;
        const own = inverse[leaving]!, by = along[leaving]!;
        for (let i = 0; i < rows; i++) own[i]! /= by;
        held[leaving] = Math.max(0, held[leaving]! / by);
        for (let r = 0; r < rows; r++) {
            const times = along[r]!;
            if (r === leaving || times === 0) continue;
            const row = inverse[r]!;
            for (let i = 0; i < rows; i++) row[i]! -= times * own[i]!;
            held[r] = Math.max(0, held[r]! - times * held[leaving]!);
        }
        for (let i = 0; i < rows; i++) duals[i]! += reduced * own[i]!;
        const before = basis[leaving]!;
        if (before >= 0) this.isBasic[before] = false;
        if (name >= 0) this.isBasic[name] = true;
        basis[leaving] = name;
        costs[leaving] = cost;
        return true;
    }
}
/** Part of what leaving a piece out costs: gains below are taken for rounding. */
const HAIR = 1e-10;
const SURPLUS = -2;
