import { columnOf, type Column } from './columns.ts';
import { tidied } from './layouts.ts';
import type { BoardKind, CuttingProblem, Item } from './problem.ts';

/**
 * Ways to cut that are known of one problem as ways to cut of another that is like it: what an alternate leaves of a stock, or the same stock without
 * sections. Pieces that the other has not are left out; none where boards or strips are otherwise.
 */
export function columnsFor(problem: CuttingProblem, known: CuttingProblem, columns: readonly Column[]): Column[] {
    const { boards, items, strips, shortestSection = Infinity } = problem;
    const isAlike = boards.length === known.boards.length && boards.every((kind, k) => keyOfKind(kind) === keyOfKind(known.boards[k]!))
        && strips.length === known.strips.length && strips.every((width, i) => width === known.strips[i]);
    if (!isAlike) return [];
    const places = new Map(items.map((item, i) => [keyOfItem(item), i])), here = known.items.map(item => places.get(keyOfItem(item)));
    return columns.flatMap(({ board, sections, strips: cut }): Column[] => {
        if (sections?.some(size => size < shortestSection)) return [];
        const own = cut.map(strip => ({
            ...strip, picks: strip.picks.flatMap(([item, count]): [number, number][] => {
                const place = here[item];
                return place === undefined ? [] : [[place, Math.min(count, items[place]!.count)]];
            }).sort(([a], [b]) => a - b),
        }));
        const column = columnOf(tidied(problem, { board, strips: own, ...sections && { sections } }));
        return column.gives.length > 0 ? [column] : [];
    });
}

function keyOfKind({ capacity, cost, across, ripOnly = false }: BoardKind): string {
    return `${capacity} ${cost} ${across} ${ripOnly}`;
}
function keyOfItem({ size, lanes }: Item): string {
    return `${size} ${lanes.join(' ')}`;
}
