import type { BoardKind, CuttingProblem } from '../../../src/cutting/solve/problem.ts';

/** The least cost by trying everything: for a handful of pieces. Infinity where they cannot all be cut. */
export function leastCost(problem: CuttingProblem): number {
    const pieces = problem.items.flatMap((item, i) => Array.from({ length: item.count }, () => i));
    const memory = new Map<string, number>();
    const cheapest = (left: number, free: readonly number[]): number => {
        if (left === 0) return 0;
        const key = `${left} ${free.join(' ')}`;
        const known = memory.get(key);
        if (known !== undefined) return known;
        const first = left & -left;
        let best = Infinity;
        // every set of pieces with the first one on one board, and the rest on others
        for (let set = left; set > 0; set = (set - 1) & left) {
            if (!(set & first)) continue;
            const onBoard = pieces.filter((_, p) => set & (1 << p));
            problem.boards.forEach((kind, k) => {
                if (free[k]! < 1 || !comesOutOf(problem, kind, onBoard)) return;
                best = Math.min(best, kind.cost + cheapest(left & ~set, free.map((n, j) => (j === k ? n - 1 : n))));
            });
        }
        memory.set(key, best);
        return best;
    };
    return cheapest((1 << pieces.length) - 1, problem.boards.map(kind => Math.min(kind.available ?? Infinity, pieces.length)));
}

function comesOutOf({ items, strips: widths }: CuttingProblem, kind: BoardKind, pieces: readonly number[]): boolean {
    const length = pieces.reduce((sum, item) => sum + items[item]!.size, 0);
    if (!kind.ripOnly && length <= kind.capacity && pieces.every(item => items[item]!.lanes.includes(0))) return true;
    // ripped first: each piece in turn on a strip that is there already, or on a new one
    const place = (next: number, strips: readonly { lane: number; room: number }[], across: number): boolean => {
        if (next === pieces.length) return true;
        const { size, lanes } = items[pieces[next]!]!;
        return lanes.filter(lane => lane > 0).some(lane =>
            strips.some((strip, s) => strip.lane === lane && strip.room >= size
                && place(next + 1, strips.map((other, t) => (t === s ? { lane, room: other.room - size } : other)), across))
            || (size <= kind.capacity && widths[lane - 1]! <= across
                && place(next + 1, [...strips, { lane, room: kind.capacity - size }], across - widths[lane - 1]!)));
    };
    return place(0, [], kind.across);
}
