import { rowOf } from '../../text/csv.ts';
import type { CsvText } from '../../text/fit.ts';
import { decimal, unitOf } from '../csv.ts';
import type { House, RoomPieces } from '../house.ts';
import { csvStanding } from '../standing.ts';
import type { RoomMeasures } from './content.ts';

const HEADER = ['room', 'step', 'kind', 'name', 'unit', 'says', 'known', 'on', 'by', 'to_do', 'cut_from', 'wall', 'along', 'east', 'south'] as const;

/** A row for each dimension, in the order in which one walks round the room; those that are known well enough have nothing to do. */
export function csvMeasure(houses: readonly House[], measuresOf: (room: RoomPieces) => RoomMeasures | undefined): CsvText {
    return csvStanding(HEADER, houses.flatMap(({ job: { show: { value: show } }, rooms }) => rooms.map(room => ({
        standing: room.standing,
        rows: (measuresOf(room)?.stops ?? []).map(({ dimension, todo, wall, along }, i) => {
            const { kind, name, ticks, known, on, by, cuts, fixture } = dimension;
            return rowOf(HEADER, {
                room: room.room.name, step: i + 1, kind, name, unit: unitOf(show), known, to_do: todo, cut_from: cuts ? 'yes' : 'no',
                ...ticks !== undefined && { says: decimal(ticks, show) }, ...on && { on }, ...by && { by }, ...wall && { wall },
                ...along !== undefined && { along: decimal(along, show) },
                ...fixture?.x !== undefined && fixture.y !== undefined && { east: decimal(fixture.x, show), south: decimal(fixture.y, show) },
            });
        }),
    }))));
}
