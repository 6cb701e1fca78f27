/** A corner in plan. */
type Corner = readonly [x: number, y: number];

/**
 * The convex outline round points, by Andrew's monotone chain: no three of its corners in a row, in the order in which the sum of
 * x1 * y2 - x2 * y1 is positive.
 */
export function hull(points: readonly Corner[]): readonly Corner[] {
    const sorted = [...points].sort(([ax, ay], [bx, by]) => ax - bx || ay - by);
    const half = (row: readonly Corner[]): Corner[] => {
        const chain: Corner[] = [];
        for (const point of row) {
            while (chain.length >= 2 && turn(chain.at(-2)!, chain.at(-1)!, point) <= 0) chain.pop();
            chain.push(point);
        }
        return chain.slice(0, -1);
    };
    return [...half(sorted), ...half([...sorted].reverse())];
}

function turn([ax, ay]: Corner, [bx, by]: Corner, [cx, cy]: Corner): number {
    return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
}
