import { endsNamed } from '../../ceiling/shape.ts';
import { knownOf, leastKnown, type Recorded } from '../../job/status.ts';
import type { BowedWall } from '../../measure/bowed.ts';
import { rowOf, type Cell } from '../../text/csv.ts';
import type { CsvText } from '../../text/fit.ts';
import { decimal, unitOf } from '../csv.ts';
import type { House, RoomPieces } from '../house.ts';
import { csvStanding } from '../standing.ts';

const HEADER = ['room', 'wall', 'what', 'of', 'unit', 'figure', 'at', 'from', 'to', 'counted_from', 'known', 'on', 'by', 'ends_at'] as const;

/**
 * A row for each figure: how far the wall stands in (less than nothing: back) at each reading, every stretch that is scribed or stays open, and how much
 * shorter (less than nothing: longer) a piece is cut that ends there. A reading says how it is known, and how far a wall leans; what follows from all that
 * is said of a wall is known as what is known least of it.
 */
export function csvWalls(houses: readonly House[], wallsOf: (room: RoomPieces) => readonly BowedWall[] | undefined): CsvText {
    return csvStanding(HEADER, houses.flatMap(({ job: { show: { value: show } }, rooms }) => rooms.map(room => ({
        standing: room.standing,
        rows: (wallsOf(room) ?? []).flatMap(({ wall, bow, profile, scribes, gaps, ends }) => {
            const length = (ticks: number): number => decimal(Math.round(ticks), show);
            const rows: Partial<Record<typeof HEADER[number], Cell>>[] = [
                ...profile.map(({ along, into, reading }) =>
                    ({ what: 'stands-in', figure: length(into), at: length(along), ...knownCells(reading, bow.lean) })),
                ...bow.lean ? [{ what: 'leans', figure: length(bow.lean.value), ...knownCells(bow.lean) }] : [],
                ...([['scribe', scribes], ['gap', gaps]] as const).flatMap(([what, all]) => all.map(({ from, to, deepest }) =>
                    ({ what, figure: length(deepest.ticks), at: length(deepest.along), from: length(from), to: length(to) }))),
                ...ends.map(({ piece, along, by, at }) => ({ what: 'cut-shorter', of: piece.id, figure: length(by), at: length(along), ...at && { ends_at: at } })),
            ];
            const told = { room: room.room.name, wall: wall.name, unit: unitOf(show), counted_from: endsNamed(wall)[0],
                ...knownCells(...bow.readings, bow.lean) };
            return rows.map(row => rowOf(HEADER, { ...told, ...row }));
        }),
    }))));
}

/** How what goes by all of these is known: as what is known least of them. */
function knownCells(...records: readonly (Recorded | undefined)[]): { readonly known: string; readonly on: string; readonly by: string } {
    const least = leastKnown(records.flatMap(record => (record ? [knownOf(record)] : [])));
    return { known: least?.known ?? '', on: least?.on ?? '', by: least?.by ?? '' };
}
