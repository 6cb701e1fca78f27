import type { BowedWall, DeepStretch } from '../../measure/bowed.ts';
import type { JsonText } from '../../text/fit.ts';
import { printJson } from '../../text/json.ts';
import { lengthJson, type LengthJson } from '../amounts-json.ts';
import { roomHead } from '../house-json.ts';
import type { House, RoomPieces } from '../house.ts';
import type { Files } from '../look.ts';
import { standingJson } from '../standing-json.ts';
import { standingOfRooms } from '../standing.ts';
import type { BowedWallJson, WallsJson, WallStretchJson } from './shape.ts';

export function jsonWalls(houses: readonly House[], wallsOf: (room: RoomPieces) => readonly BowedWall[] | undefined, files: Files): JsonText {
    return printJson<WallsJson>({
        version: 1, kind: 'cofferwright.walls', standing: standingJson(standingOfRooms(houses.flatMap(({ rooms }) => rooms))),
        rooms: houses.flatMap(({ job, rooms }) => rooms.map(room => {
            const length = (ticks: number): LengthJson => lengthJson(Math.round(ticks), Math.round(ticks), job.show.value);
            const stretch = ({ from, to, deepest: { along, ticks } }: DeepStretch): WallStretchJson =>
                ({ from: length(from), to: length(to), deepest: { along: length(along), is: length(ticks) } });
            return {
                ...roomHead(room, room.takeOff !== undefined, job, files),
                walls: (wallsOf(room) ?? []).map(({ wall, runs, profile, moved, scribes, gaps, ends }): BowedWallJson => ({
                    name: wall.name, length: length(wall.length), runs: runs?.kind ?? null,
                    profile: profile.map(({ along, into }) => ({ along: length(along), standsIn: length(into) })),
                    moved: length(moved), scribes: scribes.map(stretch), gaps: gaps.map(stretch),
                    cutShorter: ends.map(({ piece, along, by }) => ({ id: piece.id, along: length(along), by: length(by) })),
                })),
            };
        })),
    });
}
