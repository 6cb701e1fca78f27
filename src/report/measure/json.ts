import type { Dimension } from '../../measure/dimensions.ts';
import { roundTo } from '../../quantity/round.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { JsonText } from '../../text/fit.ts';
import { printJson } from '../../text/json.ts';
import { lengthJson, type LengthJson } from '../amounts-json.ts';
import { roomHead } from '../house-json.ts';
import type { House, RoomPieces } from '../house.ts';
import type { Files } from '../look.ts';
import { sourceJson } from '../place-json.ts';
import { standingJson } from '../standing-json.ts';
import { standingOfRooms } from '../standing.ts';
import type { RoomMeasures } from './content.ts';
import type { DimensionJson, MeasureJson } from './shape.ts';

export function jsonMeasure(houses: readonly House[], measuresOf: (room: RoomPieces) => RoomMeasures | undefined, files: Files): JsonText {
    return printJson<MeasureJson>({
        version: 1, kind: 'cofferwright.measure', standing: standingJson(standingOfRooms(houses.flatMap(({ rooms }) => rooms))),
        rooms: houses.flatMap(({ job, rooms }) => rooms.flatMap(room => {
            const measures = measuresOf(room), show = job.show.value;
            const length = (ticks: Ticks | undefined): LengthJson | null => (ticks === undefined ? null : lengthJson(ticks, ticks, show));
            return measures ? [{
                ...roomHead(room, room.takeOff !== undefined, job, files), least: measures.least, asked: measures.isAsked,
                dimensions: measures.stops.map(({ dimension, todo, wall, along }): DimensionJson => ({
                    kind: dimension.kind, name: dimension.name, says: length(dimension.ticks), ...sized(dimension, length), known: dimension.known,
                    on: dimension.on ?? null, by: dimension.by ?? null,
                    cutFrom: dimension.cuts, todo, wall: wall ?? null, along: length(along), source: sourceJson(dimension.at, files),
                })),
                suspects: measures.suspects.map(({ name, reads, should, slip, at }) => ({
                    name, reads: length(reads)!, should: lengthJson(should, roundTo(should, job.cutTo.value), show), slip: slip ?? null,
                    source: sourceJson(at, files),
                })),
            }] : [];
        })),
    });
}

function sized({ sizes, readings }: Dimension, length: (ticks: Ticks) => LengthJson | null): Pick<DimensionJson, 'sizes' | 'readings'> {
    return { ...sizes && { sizes: sizes.map(size => length(size)!) }, ...readings !== undefined && { readings } };
}
