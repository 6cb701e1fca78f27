import type { Tally } from './tally.ts';
import type { Web, Which } from './web.ts';

/**
 * Choices made line by line: strands go up in an order, and at each meeting the one runs through that goes up first. So nothing goes round in a ring.
 * First come those that gain by being cut nowhere (see tally.ts), then what is cut already by one that is up, or costs nothing; only where all
 * that is left would be cut by nothing one of them is taken as it is. One choice for each that can be taken so first; none where stems and bars
 * wait for each other.
 */
export function lineByLine(web: Web, tally: Tally): readonly Which[][] {
    const neighbors = web.strands.map((): number[] => []), waits = web.strands.map((): number[] => []);
    const open = new Set(tally.open);
    web.meetings.forEach(({ of: [a, b] }, m) => {
        const through = tally.decided[m] ?? null;
        if (open.has(m)) { neighbors[a]!.push(b); neighbors[b]!.push(a); }
        else if (through !== null && web.strands[through === 0 ? b : a]!.biscuits) waits[through === 0 ? b : a]!.push(through === 0 ? a : b);
    });
    const first = orderFrom(undefined, web, tally, neighbors, waits);
    const others = first.took.length === 0 ? [] : web.strands.map((_, i) => i).filter(i => tally.costs[i] === 1 && i !== first.took[0]);
    const orders = [first, ...others.map(i => orderFrom(i, web, tally, neighbors, waits))];
    return orders.flatMap(({ order, whole }) => {
        if (!whole) return [];
        const rank = new Map(order.map((strand, i) => [strand, i]));
        return [web.meetings.map(({ of: [a, b] }, m): Which => tally.decided[m] ?? (rank.get(a)! < rank.get(b)! ? 0 : 1))];
    });
}

interface Order { readonly order: readonly number[]; readonly took: readonly number[]; readonly whole: boolean }

function orderFrom(chosen: number | undefined, { strands }: Web, { costs, apart }: Tally, neighbors: readonly number[][], waits: readonly number[][]): Order {
    const up = new Set<number>(), took: number[] = [];
    const ready = (i: number): boolean => !up.has(i) && waits[i]!.every(other => up.has(other));
    const isCut = (i: number): boolean => costs[i] === null || neighbors[i]!.some(other => up.has(other));
    for (const i of apart) up.add(i);
    let left = strands.map((_, i) => i).filter(i => !up.has(i)), next = chosen;
    while (left.length > 0) {
        const before = up.size;
        for (const i of left) if (ready(i) && (isCut(i) || costs[i]! <= 0)) up.add(i);
        if (up.size === before) {
            const taken = next !== undefined && ready(next) ? next : left.find(ready);
            if (taken === undefined) return { order: [...up], took, whole: false };
            if (taken === next) next = undefined;
            took.push(taken);
            up.add(taken);
        }
        left = left.filter(i => !up.has(i));
    }
    return { order: [...up], took, whole: true };
}
