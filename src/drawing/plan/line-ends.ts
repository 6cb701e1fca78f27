import { onLine } from '../../ceiling/along.ts';
import { asPlaced, crossingPlace } from '../../ceiling/chords.ts';
import type { ShapedWall } from '../../ceiling/shape.ts';
import type { Ceiling, Line } from '../../ceiling/model.ts';
import type { Spot } from '../../job/outline.ts';
import { placeIn } from '../../plane/polygon.ts';

/** Where a line begins or stops on the plan: the middle of it, at the face of the wall or of the line there. In ticks. */
export interface LineEnd { readonly at: Spot; readonly wall?: ShapedWall }

export function runsAskew({ heading }: Pick<Line, 'heading'>): boolean {
    return heading.x !== 0 && heading.y !== 0;
}

/** Its west or north end, and the other. */
export function endsOf({ walls }: Pick<Ceiling, 'walls'>, line: Line): readonly [LineEnd, LineEnd] {
    const end = (name: string, face: number): LineEnd => {
        const wall = walls.find(each => each.name === name), at = onLine(line, face);
        return wall ? { at: onWall(line, wall) ?? at, wall } : { at };
    };
    return [end(line.from, line.faces[0]), end(line.to, line.faces[1])];
}

function onWall(line: Line, wall: ShapedWall): Spot | undefined {
    const place = crossingPlace(line, asPlaced(wall));
    return place === undefined ? undefined : onLine(line, place);
}

/** Nothing of the room lies beyond the wall in which it ends, as wide as the line is, to the edge of the plan that way: its name can stand there. */
export function looksOut({ walls }: Pick<Ceiling, 'walls'>, { low, high, runs }: Line, { at, wall }: LineEnd, way: -1 | 1): boolean {
    if (!wall) return false;
    const [across, along] = runs === 'north-south' ? ['x', 'y'] as const : ['y', 'x'] as const;
    return walls.every(({ name, from, to }) => name === wall.name || Math.max(from[across], to[across]) <= low || Math.min(from[across], to[across]) >= high
        || [from, to].every(corner => (corner[along] - at[along]) * way <= 0));
}

/** How far a place stands from a wall's beginning, in ticks. */
export function alongFromStart(wall: ShapedWall, at: Spot): number {
    return Math.hypot(at.x - wall.from.x, at.y - wall.from.y);
}

/** Square to the wall, out of the room, one long. */
export function outOf({ from, to }: Pick<ShapedWall, 'from' | 'to'>): Spot {
    const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
    return { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
}

export function isOutside({ walls }: Pick<Ceiling, 'walls'>, { x, y }: Spot): boolean {
    return placeIn(walls.map(({ from }) => from), { x: Math.round(x), y: Math.round(y) }) === 'outside';
}
