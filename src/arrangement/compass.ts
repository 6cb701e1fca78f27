import { degreesOf } from '../plane/angle.ts';
import type { Vector } from '../plane/point.ts';
import type { Compass } from './model.ts';

const POINTS: readonly Compass[] = ['east', 'south-east', 'south', 'south-west', 'west', 'north-west', 'north', 'north-east'];

/** The nearest of the eight winds, of a direction with x to the east and y to the south. */
export function compassOf({ x, y }: Vector): Compass {
    return POINTS[(Math.round(degreesOf(y, x) / 45) + 8) % 8]!;
}
