import type { CsvText } from '../../text/fit.ts';
import { rowOf } from '../../text/csv.ts';
import { decimal, unitOf } from '../csv.ts';
import type { House, RoomPieces } from '../house.ts';
import { csvStanding } from '../standing.ts';
import type { RoomHolding } from './content.ts';

const HEADER = ['room', 'beam', 'piece', 'unit', 'joist_center', 'from', 'to', 'way', 'screws', 'thread_in_wood', 'screws_into_backing'] as const;

/** A row for each joist that a piece of blocking finds, and one for a piece that finds none. Places along the piece count from its west or north end. */
export function csvJoists(houses: readonly House[], holdingOf: (room: RoomPieces) => RoomHolding | undefined): CsvText {
    return csvStanding(HEADER, houses.flatMap(({ job, rooms }) => rooms.map(room => {
        const show = job.show.value, holding = holdingOf(room);
        return {
            standing: room.standing,
            rows: (holding?.beams ?? []).flatMap(beam => beam.pieces.flatMap(({ piece, finds, intoBacking }) => {
                const thread = beam.thread === null ? null : decimal(beam.thread, show);
                const own = { room: room.room.name, beam: beam.of, piece: piece.id, unit: unitOf(show), thread_in_wood: thread };
                if (finds.length === 0) return [rowOf(HEADER, { ...own, way: 'none', screws: 0, screws_into_backing: intoBacking })];
                return finds.map(({ joist, from, to, along, screws }) => rowOf(HEADER, {
                    ...own, joist_center: decimal(joist.center, show), from: decimal(from, show), to: decimal(to, show), way: along ? 'along' : 'across', screws,
                }));
            })),
        };
    })));
}
