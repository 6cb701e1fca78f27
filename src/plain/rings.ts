/**
 * Everything that lies on a ring, with a number that all on the same rings have: strongly connected components after
 * R. Tarjan, "Depth-first search and linear graph algorithms", SIAM J. Comput. 1 (1972), without its recursion.
 */
export function ringsOf<T>(nodes: Iterable<T>, next: (node: T) => readonly T[]): ReadonlyMap<T, number> {
    const rings = new Map<T, number>();
    const order = new Map<T, number>(), lowest = new Map<T, number>();
    const open: T[] = [], isOpen = new Set<T>();
    for (const start of nodes) {
        if (order.has(start)) continue;
        const path: { readonly node: T; readonly to: readonly T[]; at: number }[] = [];
        enter(start);
        for (let step = path[path.length - 1]; step; step = path[path.length - 1]) {
            const { node, to } = step;
            if (step.at < to.length) {
                const other = to[step.at++]!;
                if (!order.has(other)) enter(other);
                else if (isOpen.has(other)) lower(node, order.get(other)!);
                continue;
            }
            path.pop();
            const above = path[path.length - 1];
            if (above) lower(above.node, lowest.get(node)!);
            if (lowest.get(node) === order.get(node)) close(node, to);
        }

        function enter(node: T): void {
            order.set(node, order.size);
            lowest.set(node, order.get(node)!);
            open.push(node);
            isOpen.add(node);
            path.push({ node, to: next(node), at: 0 });
        }
    }
    return rings;

    function lower(node: T, to: number): void {
        lowest.set(node, Math.min(lowest.get(node)!, to));
    }

    /** All that was opened since belongs together; one thing alone lies on a ring only where it leads to itself. */
    function close(first: T, to: readonly T[]): void {
        const together = open.splice(open.lastIndexOf(first));
        for (const node of together) {
            isOpen.delete(node);
            if (together.length > 1 || to.includes(first)) rings.set(node, order.get(first)!);
        }
    }
}
