import type { Prism } from '../../dryfit/model.ts';
import type { Point } from '../display-list.ts';
import { hull } from '../../plane/hull.ts';
import { keptInside } from '../fill/clip.ts';
import type { Vector } from './eye.ts';

/** The shadow of a prism on the ceiling above it, within the outline of the room: in plan, in ticks. `light`: towards the light, which is below. */
export function shadowOn({ outline, top, foot }: Prism, light: Vector, room: readonly Point[]): readonly Point[] {
    const cast = (z: number): Point[] => outline.map(([x, y]) => [x - light[0] / light[2] * z, y - light[1] / light[2] * z]);
    return keptInside(room, hull([...cast(top), ...cast(foot)]));
}
