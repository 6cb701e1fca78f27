import { lengthOf } from '../plane/point.ts';
import type { Spot } from '../job/outline.ts';
import type { Placed } from './laying.ts';
import type { Ceiling, Line } from './model.ts';

/** The way something runs, one long. */
export function unitOf({ heading: { x, y } }: Pick<Placed, 'heading'>): Spot {
    const length = lengthOf({ x, y });
    return { x: x / length, y: y / length };
}

/** How far along a line a place lies, as far as the line's direction counts from x and y = 0. */
export function placeAlong(line: Pick<Placed, 'heading'>, { x, y }: Spot): number {
    const u = unitOf(line);
    return x * u.x + y * u.y;
}

/** The place so far along a line, on its center. */
export function onLine(line: Placed, along: number): Spot {
    const { x, y } = unitOf(line), by = along - placeAlong(line, line.spot);
    return { x: line.spot.x + x * by, y: line.spot.y + y * by };
}

/** Whether the text has it die into beams that are as deep as it is. */
export function diesByChoice({ name }: Pick<Line, 'name'>, { room }: Pick<Ceiling, 'room'>): boolean {
    return room.lines.some(line => line.name === name && line.meets?.value === 'dies-into');
}
