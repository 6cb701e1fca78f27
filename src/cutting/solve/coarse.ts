import { columnOf, type Column } from './columns.ts';
import type { CuttingProblem, Item, Layout } from './problem.ts';
import { grouped } from '../../plain/groups.ts';

/**
 * The same problem with fewer lengths: items of nearly one length are taken together, all as long as the longest of them. A plan
 * for it is a plan for the problem, which `refined` gives.
 */
interface Coarse {
    readonly problem: CuttingProblem;
    refined(layouts: readonly Layout[]): Layout[];
    /** Ways to cut like those of the coarse plan: one with the longest of each group, one with the next ... */
    columns(layouts: readonly Layout[]): Column[];
}

/** @param groups how many lengths there may be, at about */
export function coarsened(problem: CuttingProblem, groups: number): Coarse {
    const each = Math.ceil(problem.items.length / groups);
    const members: number[][] = [];
    for (const alike of byLanes(problem.items)) {
        alike.sort((a, b) => problem.items[b]!.size - problem.items[a]!.size);
        for (let i = 0; i < alike.length; i += each) members.push(alike.slice(i, i + each));
    }
    return {
        problem: {
            ...problem,
            items: members.map(group => ({
                size: problem.items[group[0]!]!.size, lanes: problem.items[group[0]!]!.lanes, count: group.reduce((sum, i) => sum + problem.items[i]!.count, 0),
            })),
        },
        refined: layouts => refined(layouts, members, problem),
        columns: layouts => Array.from({ length: each }, (_, nth) => layouts.map(layout => columnOf({
            ...layout, strips: layout.strips.map(strip => ({ ...strip, picks: strip.picks.map(([group, count]): [number, number] => {
                const item = members[group]![Math.min(nth, members[group]!.length - 1)]!;
                return [item, Math.min(count, problem.items[item]!.count)];
            }) })),
        }))).flat(),
    };
}

function byLanes(items: readonly Item[]): number[][] {
    return [...grouped(items.keys(), i => items[i]!.lanes.join(' ')).values()];
}

/** Gives every place of a group to the longest of its pieces that is left. */
function refined(layouts: readonly Layout[], members: readonly (readonly number[])[], { items }: CuttingProblem): Layout[] {
    const queues = members.map(group => group.map((item): [number, number] => [item, items[item]!.count]));
    const take = (group: number, count: number): [number, number][] => {
        const picks: [number, number][] = [];
        while (count > 0) {
            const first = queues[group]![0]!;
            const taken = Math.min(count, first[1]);
            picks.push([first[0], taken]);
            first[1] -= taken;
            count -= taken;
            if (first[1] === 0) queues[group]!.shift();
        }
        return picks;
    };
    return layouts.flatMap(layout => Array.from({ length: layout.times }, () => ({
        ...layout, times: 1, strips: layout.strips.map(strip => ({ ...strip, picks: strip.picks.flatMap(([group, count]) => take(group, count)) })),
    })));
}
