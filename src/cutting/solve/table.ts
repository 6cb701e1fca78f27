import { STEPS, type Effort } from './effort.ts';
import type { Picks } from './problem.ts';

/**
 * What the best content of every capacity is worth, all at once, by a table over the capacities. Slower than the search in
 * `knapsack.ts` on most boards and never slow. Exact where the values are whole numbers below 2^53.
 */
export class Table {
    /** Items in lots of 1, 2, 4 ... pieces, so that as many as there are can be taken and no more. */
    private readonly lots: readonly Lot[];
    private readonly best: Float64Array;
    /** A row of the table a lot: whether it is taken at that capacity. Made when contents are first asked for. */
    private taken: Uint8Array | undefined;

    constructor(
        sizes: readonly number[], counts: readonly number[], among: readonly number[], private readonly capacity: number,
        private readonly effort: Effort,
    ) {
        this.best = new Float64Array(capacity + 1);
        this.lots = among.flatMap(item => lotsOf(item, sizes[item]!, Math.min(counts[item]!, Math.floor(capacity / sizes[item]!))));
    }

    /** How many cells the table has: what it costs. */
    get cells(): number {
        return this.lots.length * (this.capacity + 1);
    }

    /** Fills the table. With `traced`, contents can be read from it afterwards. */
    fill(values: ArrayLike<number>, traced: boolean): Float64Array {
        const { best, lots } = this;
        const width = this.capacity + 1;
        best.fill(0);
        if (traced) (this.taken ??= new Uint8Array(lots.length * width)).fill(0);
        for (let row = 0; row < lots.length; row++) {
            const { item, count, size } = lots[row]!;
            const value = values[item]! * count;
            if (!(value > 0)) continue;
            this.effort.spent += (width - size) * (traced ? STEPS.tracedCell : STEPS.cell);
            if (traced) addTraced(best, size, value, this.taken!.subarray(row * width, (row + 1) * width));
            else addLot(best, size, value);
        }
        this.effort.spent += (traced ? width + this.cells / 8 : width) * STEPS.cell;
        return best;
    }

    /** The content that the table was filled with at this capacity. */
    picksAt(capacity: number): Picks {
        const picks = new Map<number, number>();
        for (let row = this.lots.length - 1; row >= 0; row--) {
            if (!this.taken?.[row * (this.capacity + 1) + capacity]) continue;
            const { item, count, size } = this.lots[row]!;
            picks.set(item, (picks.get(item) ?? 0) + count);
            capacity -= size;
        }
        return [...picks].sort(([a], [b]) => a - b);
    }
}

// The two loops the time goes into: apart, so that each stays small.

function addLot(best: Float64Array, size: number, value: number): void {
    for (let room = best.length - 1; room >= size; room--) {
        const worth = best[room - size]! + value;
        if (worth > best[room]!) best[room] = worth;
    }
}

function addTraced(best: Float64Array, size: number, value: number, taken: Uint8Array): void {
    for (let room = best.length - 1; room >= size; room--) {
        const worth = best[room - size]! + value;
        if (worth > best[room]!) { best[room] = worth; taken[room] = 1; }
    }
}

export interface Lot { readonly item: number; readonly count: number; readonly size: number }

/** So many of an item in lots of 1, 2, 4 ... pieces and the rest. */
export function lotsOf(item: number, size: number, most: number): Lot[] {
    const lots: Lot[] = [];
    for (let lot = 1, left = most; left > 0; lot *= 2) {
        const count = Math.min(lot, left);
        lots.push({ item, count, size: size * count });
        left -= count;
    }
    return lots;
}
