import { turnBy, type Turn } from '../arrangement/wall-ends.ts';
import type { Spot } from '../job/outline.ts';
import type { Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';

/** The room by its walls, clockwise: each runs to where the next one begins. */
export interface Shape {
    readonly walls: readonly ShapedWall[];
    /** The box round the room, east-west and north-south. */
    readonly width: Ticks; readonly length: Ticks;
    /** All walls run along the compass. */
    readonly square: boolean;
}
export interface ShapedWall {
    readonly name: string;
    /** The words of its length, or its name. */
    readonly at: Source;
    readonly from: Spot; readonly to: Spot;
    readonly length: Ticks;
}

/** The walls that a wall meets at its west or north end, and at the other. */
export function endsOfWall(walls: readonly ShapedWall[], index: number): readonly { readonly wall: ShapedWall; readonly turn: Turn }[] {
    const own = walls[index]!, before = walls.at(index - 1)!, after = walls[(index + 1) % walls.length]!;
    const ends = [{ wall: before, turn: turnOf(before, own) }, { wall: after, turn: turnOf(own, after) }];
    return isForward(own) ? ends : ends.reverse();
}

/** Whether it runs nearer east than west, or of one that runs nearer north-south, to the south. */
export function isForward(wall: Pick<ShapedWall, 'from' | 'to'>): boolean {
    return isLevel(wall) ? wall.from.x < wall.to.x : wall.from.y < wall.to.y;
}

/** What its ends are called by the compass: west and east, or north and south. */
export function endsNamed(wall: Pick<ShapedWall, 'from' | 'to'>): readonly ['west', 'east'] | readonly ['north', 'south'] {
    return isLevel(wall) ? ['west', 'east'] : ['north', 'south'];
}

/** Whether it runs nearer east-west than north-south. */
export function isLevel({ from, to }: Pick<ShapedWall, 'from' | 'to'>): boolean {
    return Math.abs(to.x - from.x) >= Math.abs(to.y - from.y);
}

/** The way it runs, one long. */
export function wayOf({ from, to }: Pick<ShapedWall, 'from' | 'to'>): Spot {
    const long = Math.hypot(to.x - from.x, to.y - from.y) || 1;
    return { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
}

/** Square to it into the room, one long: the room is to the right of its way, with y to the south. */
export function inwards(wall: Pick<ShapedWall, 'from' | 'to'>): Spot {
    const { x, y } = wayOf(wall);
    return { x: 0 - y, y: x };
}

function turnOf(before: ShapedWall, after: ShapedWall): Turn {
    const right = (before.to.x - before.from.x) * (after.to.y - after.from.y), left = (before.to.y - before.from.y) * (after.to.x - after.from.x);
    return turnBy(right - left);
}
