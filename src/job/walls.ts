import type { Room, RoomWall } from './model.ts';

/** The wall of that name. */
export function wallOf({ walls }: Pick<Room, 'walls'>, name: string): RoomWall | undefined {
    return walls.find(wall => wall.name === name);
}
