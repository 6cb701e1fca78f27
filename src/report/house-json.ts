import type { Count } from './amounts-json.ts';
import type { RoomPieces } from './house.ts';

/** A room of a house whose boards are told together. */
export interface HouseRoom { readonly name: string; readonly laidOut: boolean; readonly errors: Count }

export function houseRooms(rooms: readonly RoomPieces[]): HouseRoom[] {
    return rooms.map(({ room, takeOff, standing }) => ({ name: room.name, laidOut: takeOff !== undefined, errors: standing.errors.length }));
}
