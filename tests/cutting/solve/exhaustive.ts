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

interface Section { readonly strips: readonly { readonly lane: number; readonly used: number }[] }

/** Each piece in turn: cut off in the whole width, on a strip of a section that is there already, on a new strip of one, on a new section. */
function comesOutOf({ items, strips: widths, shortestSection = Infinity }: CuttingProblem, kind: BoardKind, pieces: readonly number[]): boolean {
    const lengthOf = ({ strips }: Section): number => Math.max(shortestSection, ...strips.map(({ used }) => used));
    const widthOf = ({ strips }: Section): number => strips.reduce((sum, { lane }) => sum + widths[lane - 1]!, 0);
    const fits = (whole: number, sections: readonly Section[]): boolean => {
        if (sections.some(section => widthOf(section) > kind.across)) return false;
        // one section alone is the board, ripped over its whole length
        if (whole === 0 && sections.length === 1) return sections[0]!.strips.every(({ used }) => used <= kind.capacity);
        return whole + sections.reduce((sum, section) => sum + lengthOf(section), 0) <= kind.capacity;
    };
    const place = (next: number, whole: number, sections: readonly Section[]): boolean => {
        if (!sections.every(section => widthOf(section) <= kind.across && section.strips.every(({ used }) => used <= kind.capacity))) return false;
        if (next === pieces.length) return fits(whole, sections);
        const { size, lanes } = items[pieces[next]!]!;
        if (lanes.includes(0) && !kind.ripOnly && place(next + 1, whole + size, sections)) return true;
        return lanes.filter(lane => lane > 0).some(lane => {
            const into = (s: number, section: Section): boolean => place(next + 1, whole, [...sections.slice(0, s), section, ...sections.slice(s + 1)]);
            return sections.some((section, s) =>
                section.strips.some((strip, t) => strip.lane === lane
                    && into(s, { strips: section.strips.map((other, u) => (u === t ? { lane, used: other.used + size } : other)) }))
                || into(s, { strips: [...section.strips, { lane, used: size }] }))
                || into(sections.length, { strips: [{ lane, used: size }] });
        });
    };
    return place(0, 0, []);
}
