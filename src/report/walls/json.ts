import type { WallBow } from '../../job/model.ts';
import { knownOf, leastKnown } from '../../job/status.ts';
import { bowsKnown, type BowedWall, type DeepStretch } from '../../measure/bowed.ts';
import type { JsonText } from '../../text/fit.ts';
import { printJson } from '../../text/json.ts';
import { lengthJson, type LengthJson } from '../amounts-json.ts';
import { roomHead } from '../house-json.ts';
import type { House, RoomPieces } from '../house.ts';
import type { Files } from '../look.ts';
import { standingJson } from '../standing-json.ts';
import { standingOfRooms } from '../standing.ts';
import type { BowedWallJson, KnownJson, WallsJson, WallStretchJson } from './shape.ts';

export function jsonWalls(houses: readonly House[], wallsOf: (room: RoomPieces) => readonly BowedWall[] | undefined, files: Files): JsonText {
    return printJson<WallsJson>({
        version: 1, kind: 'cofferwright.walls', standing: standingJson(standingOfRooms(houses.flatMap(({ rooms }) => rooms))),
        rooms: houses.flatMap(({ job, rooms }) => rooms.map(room => {
            const length = (ticks: number): LengthJson => lengthJson(Math.round(ticks), Math.round(ticks), job.show.value);
            const stretch = ({ from, to, deepest: { along, ticks } }: DeepStretch): WallStretchJson =>
                ({ from: length(from), to: length(to), deepest: { along: length(along), is: length(ticks) } });
            return {
                ...roomHead(room, room.takeOff !== undefined, job, files),
                walls: (wallsOf(room) ?? []).map(({ wall, bow, runs, profile, moved, scribes, gaps, ends }): BowedWallJson => ({
                    name: wall.name, length: length(wall.length), runs: runs?.kind ?? null,
                    profile: profile.map(({ along, into, reading }) =>
                        ({ along: length(along), standsIn: length(into), ...reading && { reading: knownJson(knownOf(reading)) } })),
                    leans: bow.lean ? { standsIn: length(bow.lean.value), reading: knownJson(knownOf(bow.lean)) } : null,
                    ...leastOf(bow),
                    moved: length(moved), scribes: scribes.map(stretch), gaps: gaps.map(stretch),
                    cutShorter: ends.map(({ piece, along, by, at }) => ({ id: piece.id, along: length(along), by: length(by), ...at && { at } })),
                })),
            };
        })),
    });
}

function knownJson({ known, on, by }: ReturnType<typeof knownOf>): KnownJson {
    return { known, on: on ?? null, by: by ?? null };
}

function leastOf(bow: WallBow): { readonly least?: KnownJson } {
    const least = leastKnown(bowsKnown(bow));
    return least ? { least: knownJson(least) } : {};
}
