import { lengthOf } from '../plane/point.ts';
import type { Spot } from '../job/outline.ts';
import { placeAlong, unitOf } from './along.ts';
import type { Placed } from './laying.ts';
import type { ShapedWall } from './shape.ts';

/** A stretch of a line inside of the room, from wall to wall; places along the line, as far as its direction counts them from x and y = 0. */
export interface Chord { readonly from: ShapedWall; readonly to: ShapedWall; readonly start: number; readonly end: number }

/** Where a line runs inside of the room: once, or more often where it leaves the room and enters it again. */
export function chordsOf(line: Placed, walls: readonly ShapedWall[]): Chord[] {
    const { spot } = line, u = unitOf(line);
    const aside = ({ x, y }: Spot): number => u.x * (y - spot.y) - u.y * (x - spot.x);
    const crossings = walls.flatMap(wall => {
        const [a, b] = [aside(wall.from), aside(wall.to)];
        if (a > 0 === b > 0) return [];
        const share = a / (a - b), at = { x: wall.from.x + (wall.to.x - wall.from.x) * share, y: wall.from.y + (wall.to.y - wall.from.y) * share };
        return [{ wall, place: at.x * u.x + at.y * u.y }];
    }).sort((a, b) => a.place - b.place);
    const chords: Chord[] = [];
    for (let i = 0; i + 1 < crossings.length; i += 2) {
        const [enter, leave] = [crossings[i]!, crossings[i + 1]!];
        chords.push({ from: enter.wall, to: leave.wall, start: enter.place, end: leave.place });
    }
    return chords;
}

/** Where one line's center crosses another's, along the one; undefined where they are parallel. */
export function crossingPlace(own: Placed, other: Placed): number | undefined {
    const under = own.heading.x * other.heading.y - own.heading.y * other.heading.x;
    if (under === 0) return undefined;
    const dx = other.spot.x - own.spot.x, dy = other.spot.y - own.spot.y, on = (dx * other.heading.y - dy * other.heading.x) / under;
    return placeAlong(own, own.spot) + on * lengthOf(own.heading);
}

/** A wall as a line: where it begins, and the way one walks along it. */
export function asPlaced({ from, to }: Pick<ShapedWall, 'from' | 'to'>): Placed {
    return { spot: from, heading: { x: to.x - from.x, y: to.y - from.y } };
}
