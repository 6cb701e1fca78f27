import type { Counts, SectionCount } from './bound.ts';
import type { CuttingProblem } from './problem.ts';
import type { SectionTables, SectionWorth } from './sections.ts';

/**
 * What the content of a board of each kind has to be worth to be part of a plan that costs at most `dearest`, and which kinds can be in one at all:
 * all boards together may be dearer than what is on them by no more than what parts that cost from the least (reduced-cost fixing).
 */
export function floorsOf(
    { items, boards }: CuttingProblem, tables: SectionTables, values: ArrayLike<number>, worths: readonly SectionWorth[], counts: Counts, dearest: number,
): { floors: number[]; usable: boolean[] } {
    const worth = tables.worth(values, 'at most', worths);
    // what a board is too dear by at the least, and the cost that no plan is below
    const over = boards.map(({ cost }, k) => cost - worth[k]!);
    const least = items.reduce((sum, { count }, i) => sum + count * values[i]!, 0)
        + worths.reduce((sum, { worth }, s) => sum + leastOf(worth, counts.sections?.[s]), 0)
        + over.reduce((sum, each, k) => sum + each * (each > 0 ? counts.least[k]! : counts.most[k]!), 0);
    const gap = Math.max(0, dearest - least) + 1e-6 * Math.max(1, dearest);
    const floors = boards.map(({ cost }, k) => cost - gap - (over[k]! < 0 || counts.least[k]! > 0 ? over[k]! : 0));
    return { floors, usable: boards.map(({ capacity }, k) => counts.most[k]! > 0 && capacity > 0 && worth[k]! >= floors[k]!) };
}

/** What sections are worth in all plans at the least. */
function leastOf(worth: number, count: SectionCount | undefined): number {
    if (!count || worth === 0) return 0;
    return worth > 0 ? worth * count.least : worth * Math.min(MANY, count.most);
}
/** More than there are of anything. */
export const MANY = 100_000;
