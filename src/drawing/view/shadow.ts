import type { Prism } from '../../dryfit/model.ts';
import type { Point } from '../display-list.ts';
import { keptInside } from '../fill/clip.ts';
import type { Vector } from './eye.ts';

/** The shadow of a prism on the ceiling above it, within the outline of the room: in plan, in ticks. `light`: towards the light, which is below. */
export function shadowOn({ outline, top, foot }: Prism, light: Vector, room: readonly Point[]): readonly Point[] {
    const cast = (z: number): Point[] => outline.map(([x, y]) => [x - light[0] / light[2] * z, y - light[1] / light[2] * z]);
    return keptInside(room, hull([...cast(top), ...cast(foot)]));
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
