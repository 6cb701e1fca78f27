import { wholeColumn, type Column } from './columns.ts';
import { STEPS, type Effort } from './effort.ts';
import type { Prices } from './pricing.ts';
import { WHOLE, type CuttingProblem, type Picks } from './problem.ts';

/**
 * Every way to cut a board that can be part of a plan costing at most `gap` more than the bound at these prices, where nothing is ripped:
 * a column that is worth less than its price by more than the gap cannot be. Only contents are listed that nothing could be added to.
 * Undefined where there are more than `most`, or the effort is spent.
 */
export function columnsWithin(
    problem: CuttingProblem, prices: Prices, usable: readonly boolean[], gap: number, most: number, effort: Effort,
): Column[] | undefined {
    const columns: Column[] = [];
    const parts = partsOf(problem, prices.items, WHOLE), longest = Math.max(...problem.boards.map(kind => kind.capacity));
    const listing = new Listing(parts, longest, effort);
    const contents = (picks: Picks): Picks => picks.map(([part, count]) => [parts[part]!.item, count] as const).sort(([a], [b]) => a - b);
    for (const [board, { capacity }] of problem.boards.entries()) {
        if (!usable[board]) continue;
        const isListed = listing.list(capacity, prices.boards[board]! - gap, most - columns.length, picks => {
            columns.push(wholeColumn(board, contents(picks)));
        });
        if (!isListed) return undefined;
    }
    return columns;
}

/** What a board or strip is cut into: there are so many of it. */
interface BoardPart { readonly size: number; readonly count: number; readonly value: number }

/** The pieces that may be cut from a lane. */
export function partsOf({ items }: CuttingProblem, values: ArrayLike<number>, lane: number): (BoardPart & { readonly item: number })[] {
    return items.flatMap(({ size, count, lanes }, item) =>
        (lanes.includes(lane) && count > 0 ? [{ item, size, count, value: values[item]! }] : []));
}

/** Lists the contents of a board that are worth at least so much, and that nothing could be added to. */
export class Listing {
    private readonly items: readonly number[];
    private readonly sizes: readonly number[];
    private readonly values: readonly number[];
    private readonly counts: readonly number[];
    private readonly width: number;
    /** Row i: what the best content made of items i, i+1 ... is worth, by capacity. */
    private readonly rows: Float64Array[] = [];
    private readonly shortest: number[] = [Infinity];
    private readonly effort: Effort;

    /** @param longest of the boards and strips that are to be listed */
    constructor(parts: readonly BoardPart[], longest: number, effort: Effort) {
        const fitting = [...parts.keys()].filter(i => parts[i]!.size <= longest).sort((a, b) => parts[b]!.size - parts[a]!.size);
        this.items = fitting;
        this.sizes = fitting.map(i => parts[i]!.size);
        this.values = fitting.map(i => Math.max(0, parts[i]!.value));
        this.counts = fitting.map(i => Math.min(parts[i]!.count, Math.floor(longest / parts[i]!.size)));
        this.width = longest + 1;
        this.effort = effort;
        if (fitting.length * this.width > MOST_CELLS) return;
        let below: Float64Array = new Float64Array(this.width);
        this.rows.unshift(below);
        for (let i = fitting.length - 1; i >= 0; i--) this.rows.unshift(below = this.withItem(below, i));
        for (let i = fitting.length - 1; i >= 0; i--) this.shortest.unshift(Math.min(this.shortest[0]!, this.sizes[i]!));
    }

    /** False where there are too many. What is found is told by the places of its parts in their list. */
    list(capacity: number, atLeast: number, most: number, found: (picks: [part: number, count: number][]) => void): boolean {
        if (this.items.length === 0) return true;
        if (this.rows.length === 0) return false;
        const least = atLeast - 1e-7 * Math.max(1, Math.abs(atLeast));
        const { sizes, values, counts, items, rows, shortest } = this;
        const picked: [number, number][] = [];
        let listed = 0;
        let nodes = 0;
        // `addable`: the shortest piece of those decided on that one more could be taken of
        const search = (i: number, room: number, value: number, addable: number): boolean => {
            if (++nodes > MOST_NODES) return false;
            if (room < shortest[i]!) {
                if (value < least || room >= addable || picked.length === 0) return true;
                found(picked.map(([item, count]): [number, number] => [item, count]));
                return ++listed <= most;
            }
            if (value + rows[i]![room]! < least) return true;
            for (let count = Math.min(counts[i]!, Math.floor(room / sizes[i]!)); count >= 0; count--) {
                if (count > 0) picked.push([items[i]!, count]);
                const more = search(i + 1, room - count * sizes[i]!, value + count * values[i]!, count < counts[i]! ? Math.min(addable, sizes[i]!) : addable);
                if (count > 0) picked.pop();
                if (!more) return false;
            }
            return true;
        };
        const complete = search(0, capacity, 0, Infinity);
        this.effort.spent += nodes * STEPS.node + listed * STEPS.cut;
        return complete;
    }

    private withItem(below: Float64Array, i: number): Float64Array {
        const row = Float64Array.from(below);
        for (let lot = 1, left = this.counts[i]!; left > 0; lot *= 2) {
            const count = Math.min(lot, left);
            const size = this.sizes[i]! * count;
            const value = this.values[i]! * count;
            for (let room = this.width - 1; room >= size; room--) row[room] = Math.max(row[room]!, row[room - size]! + value);
            left -= count;
            this.effort.spent += 2 * this.width * STEPS.cell;
        }
        this.effort.spent += 2 * this.width * STEPS.cell;
        return row;
    }
}
const MOST_CELLS = 12_000_000;
const MOST_NODES = 3_000_000;
