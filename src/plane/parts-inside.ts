import type { Point } from './point.ts';

/** Less than this of a stretch is rounding. */
const HAIR = 1e-9;

/** The parts of a line of stretches that lie in a polygon, each from place to place. Of a line that lies in it as a whole that line alone. */
export function partsInside(line: readonly Point[], polygon: readonly Point[]): Point[][] {
    const parts: Point[][] = [];
    let open: Point[] | undefined;
    for (let i = 1; i < line.length; i++) {
        const a = line[i - 1]!, b = line[i]!, shares = [0, ...crossings(a, b, polygon), 1].sort((one, other) => one - other);
        for (let k = 1; k < shares.length; k++) {
            const [from, to] = [shares[k - 1]!, shares[k]!];
            if (to - from < HAIR) continue;
            if (!isInside(between(a, b, (from + to) / 2), polygon)) { open = undefined; continue; }
            if (!open) parts.push(open = [between(a, b, from)]);
            // a place in the middle of a stretch is none where the line does not turn
            if (k > 1 && open.length > 1 && from > 0) open.pop();
            open.push(between(a, b, to));
        }
    }
    return parts;
}

function between(a: Point, b: Point, share: number): Point {
    return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}

/** Where a stretch comes to an edge, as shares of it. */
function crossings(a: Point, b: Point, polygon: readonly Point[]): number[] {
    return polygon.flatMap((c, i) => {
        const d = polygon[(i + 1) % polygon.length]!, along = { x: b.x - a.x, y: b.y - a.y }, edge = { x: d.x - c.x, y: d.y - c.y };
        const under = along.x * edge.y - along.y * edge.x;
        if (under === 0) return [];
        const share = ((c.x - a.x) * edge.y - (c.y - a.y) * edge.x) / under, at = ((c.x - a.x) * along.y - (c.y - a.y) * along.x) / under;
        return share > 0 && share < 1 && at >= 0 && at <= 1 ? [share] : [];
    });
}

/** Whether a ray to the east comes to an odd number of edges. */
function isInside({ x, y }: Point, polygon: readonly Point[]): boolean {
    let inside = false;
    polygon.forEach((c, i) => {
        const d = polygon[(i + 1) % polygon.length]!;
        if (c.y > y !== d.y > y && x < c.x + (d.x - c.x) * (y - c.y) / (d.y - c.y)) inside = !inside;
    });
    return inside;
}
