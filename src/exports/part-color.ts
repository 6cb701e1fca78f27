import { WOODS } from '../drawing/view/woods.ts';
import type { Part } from '../takeoff/model.ts';

/** Colors by part: red, green, blue from 0 to 255. */
export function partColor(part: Part): readonly number[] {
    return [1, 3, 5].map(i => parseInt(WOODS.light[part].slice(i, i + 2), 16));
}
