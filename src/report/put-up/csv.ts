import type { CsvText } from '../../text/fit.ts';
import { rowOf } from '../../text/csv.ts';
import { decimal, unitOf } from '../csv.ts';
import type { House, RoomPieces } from '../house.ts';
import { csvStanding } from '../standing.ts';
import type { RoomPutUp } from './content.ts';
import { isBeside, wayOf } from './way.ts';

const HEADER = ['room', 'step', 'day', 'crew', 'kind', 'of', 'piece', 'way', 'unit', 'east', 'south', 'people', 'up', 'after'] as const;

/** A row for each piece, in the order in which they are put up. `east`, `south`: how far beside its place it is lifted. `after`: what others finish first. */
export function csvPutUp(houses: readonly House[], putUpOf: (room: RoomPieces) => RoomPutUp | undefined): CsvText {
    return csvStanding(HEADER, houses.flatMap(({ job: { show }, rooms }) => rooms.map(room => ({
        standing: room.standing,
        rows: (putUpOf(room)?.steps ?? []).flatMap(({ step: { number, kind, of, placings }, people, shift, up, waits }) => placings.map(({ piece, path }) => {
            const isAside = path !== null && isBeside(path);
            return rowOf(HEADER, {
                room: room.room.name, step: number, kind, of: `${of.kind} ${of.name}`, piece: piece.id, unit: unitOf(show.value), people, ...shift && { day: shift.first, crew: shift.crew },
                way: wayOf(path), up: up.has(piece) ? 'yes' : 'no', after: waits.map(({ name }) => name).join('; '),
                ...isAside && { east: decimal(Math.round(path.aside.x), show.value), south: decimal(Math.round(path.aside.y), show.value) },
            });
        })),
    }))));
}
