import type { CsvText } from '../../text/fit.ts';
import { rowOf } from '../../text/csv.ts';
import { decimal, unitOf } from '../csv.ts';
import type { House, RoomPieces } from '../house.ts';
import { csvStanding } from '../standing.ts';
import type { TradeTask } from './content.ts';

const HEADER = ['room', 'trade', 'of', 'what', 'does', 'words', 'unit', 'east', 'south', 'to_east', 'to_south', 'before', 'why'] as const;

/** A row for each task; places from the room's north-west corner. */
export function csvTrades(houses: readonly House[], tasksOf: (room: RoomPieces) => readonly TradeTask[] | undefined): CsvText {
    return csvStanding(HEADER, houses.flatMap(({ job: { show }, rooms }) => rooms.map(room => ({
        standing: room.standing,
        rows: (tasksOf(room) ?? []).map(({ trade, of, kind, does, what, at, to, before, why }) => rowOf(HEADER, {
            room: room.room.name, trade, of, what: kind, does, words: what, unit: unitOf(show.value), before, why,
            ...at && { east: decimal(at.x, show.value), south: decimal(at.y, show.value) },
            ...to && { to_east: decimal(to.x, show.value), to_south: decimal(to.y, show.value) },
        })),
    }))));
}
