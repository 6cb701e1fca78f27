import { endsNamed } from '../../ceiling/shape.ts';
import type { BowedWall } from '../../measure/bowed.ts';
import { rowOf, type Cell } from '../../text/csv.ts';
import type { CsvText } from '../../text/fit.ts';
import { decimal, unitOf } from '../csv.ts';
import type { House, RoomPieces } from '../house.ts';
import { csvStanding } from '../standing.ts';

const HEADER = ['room', 'wall', 'what', 'of', 'unit', 'figure', 'at', 'from', 'to', 'counted_from'] as const;

/**
 * A row for each figure: how far the wall stands in (less than nothing: back) at each reading, every stretch that is scribed or stays open, and how much
 * shorter (less than nothing: longer) a piece is cut that ends there.
 */
export function csvWalls(houses: readonly House[], wallsOf: (room: RoomPieces) => readonly BowedWall[] | undefined): CsvText {
    return csvStanding(HEADER, houses.flatMap(({ job: { show: { value: show } }, rooms }) => rooms.map(room => ({
        standing: room.standing,
        rows: (wallsOf(room) ?? []).flatMap(({ wall, profile, scribes, gaps, ends }) => {
            const length = (ticks: number): number => decimal(Math.round(ticks), show);
            const rows: Partial<Record<typeof HEADER[number], Cell>>[] = [
                ...profile.map(({ along, into }) => ({ what: 'stands-in', figure: length(into), at: length(along) })),
                ...([['scribe', scribes], ['gap', gaps]] as const).flatMap(([what, all]) => all.map(({ from, to, deepest }) =>
                    ({ what, figure: length(deepest.ticks), at: length(deepest.along), from: length(from), to: length(to) }))),
                ...ends.map(({ piece, along, by }) => ({ what: 'cut-shorter', of: piece.id, figure: length(by), at: length(along) })),
            ];
            return rows.map(row => rowOf(HEADER, { room: room.room.name, wall: wall.name, unit: unitOf(show), counted_from: endsNamed(wall)[0], ...row }));
        }),
    }))));
}
