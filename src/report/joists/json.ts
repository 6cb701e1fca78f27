import { WITHDRAWAL } from '../../data/fasteners.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { printJson } from '../../text/json.ts';
import type { JsonText } from '../../text/fit.ts';
import { lengthJson, type LengthJson } from '../amounts-json.ts';
import { roomHead } from '../house-json.ts';
import type { House, RoomPieces } from '../house.ts';
import type { Files } from '../look.ts';
import { sourceJson } from '../place-json.ts';
import { standingJson } from '../standing-json.ts';
import { standingOfRooms } from '../standing.ts';
import type { RoomHolding } from './content.ts';
import type { HoldingRoomJson, JoistsJson } from './shape.ts';

export function jsonJoists(houses: readonly House[], holdingOf: (room: RoomPieces) => RoomHolding | undefined, files: Files): JsonText {
    return printJson<JoistsJson>({
        version: 1, kind: 'cofferwright.joists', standing: standingJson(standingOfRooms(houses.flatMap(({ rooms }) => rooms))),
        rooms: houses.flatMap(({ job, rooms }) => rooms.map((room): HoldingRoomJson => {
            const holding = holdingOf(room);
            const length = (ticks: Ticks): LengthJson => lengthJson(Math.round(ticks), Math.round(ticks), job.show.value);
            return {
                ...roomHead(room, room.takeOff !== undefined, job, files),
                joists: holding ? {
                    running: holding.joists.runs, source: sourceJson(holding.joists.said.at, files),
                    all: holding.joists.all.map(({ center, half, found }) => ({
                        center: length(center), width: length(2 * half), found: found && found.how !== 'missing' ? found.how : null,
                    })),
                } : null,
                beams: holding?.beams.map(beam => ({
                    line: beam.isLine ? beam.of : null, wall: beam.isLine ? null : beam.of,
                    screws: beam.screws, intoBacking: beam.intoBacking, thread: beam.thread === null ? null : length(beam.thread),
                    pounds: rounded(beam.pounds), poundsPerFoot: rounded(beam.poundsPerFoot), poundsPerScrew: rounded(beam.poundsPerScrew),
                    withdrawal: beam.withdrawal
                        && { perInch: rounded(beam.withdrawal.perInch), ofScrew: rounded(beam.withdrawal.ofScrew), source: WITHDRAWAL.source },
                    pieces: beam.pieces.map(({ piece, screws, intoBacking, finds, open }) => ({
                        id: piece.id, screws, intoBacking, open: { from: length(open.from), to: length(open.to) },
                        finds: finds.map(({ joist, from, to, along, screws: into }) => ({
                            center: length(joist.center), from: length(from), to: length(to), along, screws: into,
                        })),
                    })),
                })) ?? [],
            };
        })),
    });
}

/** What no scale would show is left out. */
function rounded(pounds: number): number;
function rounded(pounds: number | null): number | null;
function rounded(pounds: number | null): number | null {
    return pounds === null ? null : Math.round(pounds * 1000) / 1000;
}
