import type { Prism } from '../../dryfit/model.ts';
import type { Point } from '../display-list.ts';
import type { Vector } from './eye.ts';

/** The shadow of a prism on the ceiling above it, within the room: in plan, in ticks. `light`: towards the light, which is below. */
export function shadowOn({ outline, top, foot }: Prism, light: Vector, room: { readonly width: number; readonly length: number }): readonly Point[] {
    const cast = (z: number): Point[] => outline.map(([x, y]) => [x - light[0] / light[2] * z, y - light[1] / light[2] * z]);
    return withinRoom(hull([...cast(top), ...cast(foot)]), room);
}

/** Convex hull, by Andrew's monotone chain. */
function hull(points: readonly Point[]): readonly Point[] {
    const sorted = [...points].sort(([ax, ay], [bx, by]) => ax - bx || ay - by);
    const half = (row: readonly Point[]): Point[] => {
        const chain: Point[] = [];
        for (const point of row) {
            while (chain.length >= 2 && turn(chain.at(-2)!, chain.at(-1)!, point) <= 0) chain.pop();
            chain.push(point);
        }
        return chain.slice(0, -1);
    };
    return [...half(sorted), ...half([...sorted].reverse())];
}

function turn([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number {
    return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
}

/** Cut off at one wall after the other (Sutherland and Hodgman). */
function withinRoom(shape: readonly Point[], { width, length }: { readonly width: number; readonly length: number }): readonly Point[] {
    const walls: readonly ((point: Point) => number)[] = [([x]) => x, ([x]) => width - x, ([, y]) => y, ([, y]) => length - y];
    return walls.reduce((rest, inside) => rest.flatMap((point, i) => {
        const next = rest[(i + 1) % rest.length]!;
        const [here, there] = [inside(point), inside(next)];
        const share = here / (here - there);
        const crossing: Point[] = (here < 0) === (there < 0) ? [] : [[point[0] + share * (next[0] - point[0]), point[1] + share * (next[1] - point[1])]];
        return here < 0 ? crossing : [point, ...crossing];
    }), shape);
}
