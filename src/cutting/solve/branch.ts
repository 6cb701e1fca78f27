import { PutAside, type BranchWatch } from './aside.ts';
import { allCounts, halves, othersThan, type Counts, type SectionCount, type VerifiedBound } from './bound.ts';
import type { Column, Weighted } from './columns.ts';
import type { Effort } from './effort.ts';
import { generate } from './generate.ts';
import { sectionLengths, sectionsFrom } from './layouts.ts';
import { Master } from './master.ts';
import { Pricing } from './pricing.ts';
import type { CuttingProblem } from './problem.ts';
import type { LinearSolver } from './solver.ts';

export interface Branch { readonly counts: Counts; readonly bound: number; readonly depth: number }

/**
 * Branches on how many boards of each kind are bought: where a solution in parts buys 3.4 boards of a kind, no plan is lost by
 * looking at at most 3 and at least 4 apart. Cost depends on the boards alone, so with whole numbers of boards the cost is
 * settled, and what is left is whether the pieces can be cut from them. Before that, where boards are ripped, on how many sections there are of a length
 * or longer:
 * half a section of strips that lie abreast costs half a board, and no plan has one. A branch is left when the verified bound says that it
 * holds nothing cheaper. `every`: looks at no other numbers of boards. Ends when there is none left or the effort is spent; says through `watch` how
 * far it came.
 */
export function* branchOnBoards(
    problem: CuttingProblem, columns: readonly Column[], bounds: VerifiedBound, step: number, solver: LinearSolver, effort: Effort, watch: BranchWatch,
    every: Counts = allCounts(problem, watch.best()),
): Generator<void> {
    const demand = problem.items.map(item => item.count);
    const pricing = new Pricing(problem, demand, effort);
    let master = new Master(problem, demand, every, solver, effort);
    let lengths: readonly SectionCount[] = []; // of which sections are counted
    const open: Branch[] = [{ counts: every, bound: 0, depth: 0 }];
    const aside = new PutAside(watch);
    try {
        for (const column of columns) master.add(column);
        while (true) {
            watch.onBound(Math.min(watch.best(), aside.bound, open.at(-1)?.bound ?? Infinity));
            if (open.length > 0 && open.at(-1)!.bound >= watch.best()) open.length = 0;
            aside.sift(open.length === 0);
            if (effort.isSpent || open.length === 0 && aside.isEmpty) return;
            if (open.length === 0 || aside.isFull) {
                aside.look();
                yield;
                continue;
            }
            const branch = open.pop()!;
            const counts = withSections(branch.counts, lengths);
            master.limit(counts);
            const made = generate(problem, demand, master, pricing, counts, effort, { cutoff: watch.best() - step + 0.001 * step });
            if (!made) { aside.leave(branch.bound); continue; }
            const bound = Math.max(branch.bound, bounds.of(made.values, counts, made.sections) ?? 0);
            if (bound >= watch.best()) continue;
            if (!made.complete && effort.isSpent || made.answer.lacking) {
                // given up halfway, or no plan at all though the bound does not show it: it stays as it is
                aside.leave(bound);
                continue;
            }
            const { boards, used, prices } = made.answer;
            const from = mostPartedSection(problem, used);
            const parted = mostParted(boards);
            if (from !== undefined) {
                if (lengths.every(other => other.from !== from)) {
                    lengths = [...lengths, { from, least: 0, most: Infinity }];
                    const known = master.allColumns();
                    master.dispose();
                    master = new Master(problem, demand, { ...every, sections: lengths }, solver, effort);
                    for (const column of known) master.add(column);
                }
                const count = used.reduce((sum, { column, times }) => sum + times * sectionsFrom(problem, column, from), 0);
                add(open, splitSections(branch, withSections(branch.counts, lengths).sections!, from, Math.floor(count), bound));
            } else if (parted !== undefined) {
                add(open, split(branch, parted, Math.floor(boards[parted]!), bound));
            } else {
                const whole = boards.map(Math.round);
                const cost = whole.reduce((sum, n, k) => sum + n * problem.boards[k]!.cost, 0);
                const start = { used, columns: master.allColumns(), values: prices.items };
                const found = { boards: whole, counts: { ...counts, least: whole, most: whole }, cost, prices, start };
                if (!watch.onWholeBoards(found)) aside.put(found, Math.max(bound, cost));
                add(open, around(branch, whole, bound));
            }
            yield;
        }
    } finally {
        master.dispose();
    }
}

/** Puts branches where their turn is: that with the lowest bound is last and comes next, of those alike the deepest, then the first to be there. */
export function add(open: Branch[], branches: readonly Branch[]): void {
    for (const branch of branches) {
        let low = 0, high = open.length;
        while (low < high) {
            const middle = (low + high) >> 1, other = open[middle]!;
            if (other.bound > branch.bound || (other.bound === branch.bound && other.depth < branch.depth)) low = middle + 1; else high = middle;
        }
        open.splice(low, 0, branch);
    }
}

/** The kind of board that is furthest from a whole number. */
function mostParted(boards: readonly number[]): number | undefined {
    let parted: number | undefined;
    let most = 1e-6;
    boards.forEach((n, k) => {
        const off = Math.abs(n - Math.round(n));
        if (off > most) { most = off; parted = k; }
    });
    return parted;
}

function withSections(counts: Counts, lengths: readonly SectionCount[]): Counts {
    return lengths.length === 0 ? counts : { ...counts, sections: lengths.map((free, s) => counts.sections?.[s] ?? free) };
}

/** The length from which on the number of sections is furthest from a whole one, long ones first: they weigh most. */
function mostPartedSection(problem: CuttingProblem, used: readonly Weighted[]): number | undefined {
    if (problem.shortestSection === undefined) return undefined;
    const counts = new Map<number, number>();
    for (const { column, times } of used) for (const size of sectionLengths(problem, column)) counts.set(size, (counts.get(size) ?? 0) + times);
    let parted: number | undefined, most = 0, sum = 0;
    for (const [size, times] of [...counts].sort(([a], [b]) => b - a)) {
        sum += times;
        const off = Math.abs(sum - Math.round(sum));
        if (off > 1e-6 && off * size > most) { most = off * size; parted = size; }
    }
    return parted;
}

export function splitSections({ counts, depth }: Branch, sections: readonly SectionCount[], from: number, floor: number, bound: number): Branch[] {
    const limited = (limit: Partial<SectionCount>): Counts =>
        ({ ...counts, sections: sections.map(each => (each.from === from ? { ...each, ...limit } : each)) });
    return [{ counts: limited({ most: floor }), bound, depth: depth + 1 }, { counts: limited({ least: floor + 1 }), bound, depth: depth + 1 }];
}

export function split({ counts, depth }: Branch, kind: number, floor: number, bound: number): Branch[] {
    return halves(counts, kind, floor).map(half => ({ counts: half, bound, depth: depth + 1 }));
}

/** All other numbers of boards in the branch. */
export function around({ counts, depth }: Branch, whole: readonly number[], bound: number): Branch[] {
    return othersThan(counts, whole).map(others => ({ counts: others, bound, depth: depth + 1 }));
}
