import { STEPS, type Effort } from './effort.ts';
import type { Picks } from './problem.ts';

/** The best content found for a board or strip. */
interface Filling {
    /** What the best content is worth; where none is worth more than was asked for, what was asked for. */
    readonly value: number;
    /** Contents worth more than was asked for, the best last. */
    readonly picks: readonly Picks[];
    /** False where the search was given up: then there may be better. */
    readonly exact: boolean;
}

/**
 * Fills a board with the pieces that are worth most together: depth first, what is worth most by its length first, leaving
 * branches that cannot get above the best found even if the rest of the board were filled at the best rate left.
 */
export class Knapsack {
    private readonly order: number[] = [];
    private readonly rates: number[] = [];
    /** The shortest piece from here on in the order. */
    private readonly shortest: number[] = [];
    private values: ArrayLike<number> = [];
    private readonly gain: number;

    /** @param hair gains below this part of the value are taken for rounding; 0 is exact where the values are whole numbers */
    constructor(private readonly sizes: readonly number[], private readonly effort: Effort, hair = 1e-12) {
        this.gain = 1 + hair;
    }

    /** Sets what each item is worth. Only items in `among` that are worth something are used. */
    worth(values: ArrayLike<number>, among: readonly number[]): void {
        const { sizes, order } = this;
        this.values = values;
        order.length = 0;
        for (const item of among) if (values[item]! > 0) order.push(item);
        order.sort((a, b) => values[b]! / sizes[b]! - values[a]! / sizes[a]! || sizes[b]! - sizes[a]!);
        this.effort.spent += STEPS.asked + among.length * STEPS.sorted;
        let shortest = Infinity;
        for (let i = order.length - 1; i >= 0; i--) {
            shortest = Math.min(shortest, sizes[order[i]!]!);
            this.shortest[i] = shortest;
            this.rates[i] = values[order[i]!]! / sizes[order[i]!]!;
        }
        this.rates[order.length] = 0;
        this.shortest[order.length] = Infinity;
    }

    /**
     * Contents of a board of `capacity`, at most `counts` of each item, that are worth more than `above`.
     * @param keep how many of the contents found on the way to the best are kept
     */
    fill(capacity: number, counts: ArrayLike<number>, above: number, budget: number, keep = 1): Filling {
        const { sizes, values, order, rates, shortest, gain } = this;
        const found: Picks[] = [];
        const picked: [number, number][] = [];
        let best = above;
        let nodes = 0;
        // one level for each item that is picked: a board may hold thousands, more than calls can be in each other
        const next: number[] = [], rooms: number[] = [], worths: number[] = [];
        let depth = -1;
        const enter = (from: number, room: number, value: number): void => {
            depth++;
            next[depth] = from;
            rooms[depth] = room;
            worths[depth] = value;
            nodes++;
            if (value <= best) return;
            best = value;
            found.push(picked.map(([item, count]) => [item, count]));
            if (found.length > keep) found.shift();
        };
        enter(0, capacity, 0);
        while (depth >= 0) {
            const i = next[depth]!, room = rooms[depth]!, value = worths[depth]!, isBack = picked.length > depth;
            if (isBack && nodes > budget) { picked.pop(); depth--; continue; }
            if (!isBack) {
                if (i >= order.length || room < shortest[i]! || value + room * rates[i]! <= best * gain) { depth--; continue; }
                const most = Math.min(counts[order[i]!]!, Math.floor(room / sizes[order[i]!]!));
                if (most <= 0) { next[depth] = i + 1; continue; }
                picked.push([order[i]!, most + 1]);
            }
            const entry = picked[depth]!, count = entry[1] - 1, rest = room - count * sizes[entry[0]]!, worth = value + count * values[entry[0]]!;
            if (count <= 0 || worth + rest * rates[i + 1]! <= best * gain && worth <= best) {
                picked.pop();
                next[depth] = i + 1;
                continue;
            }
            entry[1] = count;
            enter(i + 1, rest, worth);
        }
        this.effort.spent += STEPS.asked + nodes * STEPS.node;
        return { value: best, picks: found, exact: nodes <= budget };
    }
}
