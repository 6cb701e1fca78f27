import { sideOf } from './polygon.ts';
import type { Point } from './point.ts';

/** Three points by their places in the list, clockwise on the plan. */
export type Triangle = readonly [number, number, number];

/**
 * The Delaunay triangulation of points in whole numbers, no two of them the same: no point lies inside the circle through the corners of a triangle.
 * None where all lie in one row. Points are added from west to east, each joined to all of the hull that it sees; then edges are turned
 * in their quadrilaterals until every circle is empty (Lawson 1977). Which side of a line or a circle a point lies on is exact, so that readings on a
 * grid, four on every circle, make no trouble; which of two equally good diagonals is taken depends on the order from west to east alone.
 */
export function triangulate(points: readonly Point[]): Triangle[] {
    const order = points.map((_, i) => i).sort((a, b) => points[a]!.x - points[b]!.x || points[a]!.y - points[b]!.y);
    const [first, second] = order;
    const apart = order.findIndex((i, nth) => nth > 1 && sideOf(points[first!]!, points[second!]!, points[i]!) !== 0);
    if (apart < 0) return [];
    const mesh = new Mesh(points);
    const row = order.slice(0, apart), tip = order[apart]!, isRight = sideOf(points[first!]!, points[second!]!, points[tip]!) > 0;
    for (let i = 0; i + 1 < row.length; i++) mesh.add(...isRight ? [row[i]!, row[i + 1]!, tip] as const : [row[i + 1]!, row[i]!, tip] as const);
    let hull = isRight ? [...row, tip] : [...row.toReversed(), tip];
    for (const i of order.slice(apart + 1)) hull = joined(hull, i, mesh);
    return mesh.settled();
}

/** Joins a point outside of the hull (clockwise) to each of its edges that it sees; the hull with it. */
function joined(hull: readonly number[], point: number, mesh: Mesh): number[] {
    const { points } = mesh, sees = hull.map((a, i) => sideOf(points[a]!, points[hull[(i + 1) % hull.length]!]!, points[point]!) < 0);
    // what is seen is one run of edges; it may go over the end of the list
    const begin = sees.findIndex((seen, i) => seen && !sees[(i + hull.length - 1) % hull.length]);
    const turned = [...hull.slice(begin), ...hull.slice(0, begin)];
    let many = 0;
    while (many < turned.length && sees[(begin + many) % hull.length]) {
        mesh.add(turned[(many + 1) % turned.length]!, turned[many]!, point);
        many++;
    }
    return [turned[0]!, point, ...turned.slice(many)];
}

/** Triangles by their edges: `next` of the edge from a to b is the third corner of the triangle that lies to its right. */
class Mesh {
    private readonly next = new Map<number, number>();
    constructor(readonly points: readonly Point[]) {}

    add(a: number, b: number, c: number): void {
        for (const [from, to, tip] of [[a, b, c], [b, c, a], [c, a, b]] as const) this.next.set(this.key(from, to), tip);
    }

    /** Turns edges until every circle is empty. */
    settled(): Triangle[] {
        const { length } = this.points, waiting = [...this.next.keys()].filter(key => Math.floor(key / length) < key % length);
        while (waiting.length > 0) {
            const key = waiting.pop()!, a = Math.floor(key / length), b = key % length, c = this.next.get(key), d = this.next.get(this.key(b, a));
            if (c === undefined || d === undefined || !isInCircle(this.points[a]!, this.points[b]!, this.points[c]!, this.points[d]!)) continue;
            this.next.delete(key);
            this.next.delete(this.key(b, a));
            this.add(a, d, c);
            this.add(d, b, c);
            waiting.push(this.key(a, d), this.key(d, b), this.key(b, c), this.key(c, a));
        }
        return [...this.next].flatMap(([key, c]): Triangle[] => {
            const a = Math.floor(key / length), b = key % length;
            return a < b && a < c ? [[a, b, c]] : [];
        }).sort((one, other) => one[0] - other[0] || one[1] - other[1] || one[2] - other[2]);
    }

    private key(a: number, b: number): number {
        return a * this.points.length + b;
    }
}

/** Whether d lies inside the circle through a, b, c, which run clockwise on the plan (y to the south). Exact. */
function isInCircle(a: Point, b: Point, c: Point, d: Point): boolean {
    const [ax, ay, bx, by, cx, cy] = [a.x - d.x, a.y - d.y, b.x - d.x, b.y - d.y, c.x - d.x, c.y - d.y];
    const a2 = ax * ax + ay * ay, b2 = bx * bx + by * by, c2 = cx * cx + cy * cy;
    const terms = [a2 * bx * cy, a2 * cx * by, b2 * cx * ay, b2 * ax * cy, c2 * ax * by, c2 * bx * ay] as const;
    const plain = terms[0] - terms[1] + (terms[2] - terms[3]) + (terms[4] - terms[5]);
    // what ten roundings, each of 2^-53, can make of it at most
    if (Math.abs(plain) > terms.reduce((sum, term) => sum + Math.abs(term), 0) * 2e-15) return plain > 0;
    const [Ax, Ay, Bx, By, Cx, Cy] = [ax, ay, bx, by, cx, cy].map(BigInt) as [bigint, bigint, bigint, bigint, bigint, bigint];
    const A2 = Ax * Ax + Ay * Ay, B2 = Bx * Bx + By * By, C2 = Cx * Cx + Cy * Cy;
    return A2 * (Bx * Cy - Cx * By) + B2 * (Cx * Ay - Ax * Cy) + C2 * (Ax * By - Bx * Ay) > 0n;
}
