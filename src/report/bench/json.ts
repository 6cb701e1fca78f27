import type { BoardAtBench } from '../../measure/bench.ts';
import type { Drift } from '../../measure/drift.ts';
import type { JobSettings } from '../../job/model.ts';
import { nameInRoom } from '../../takeoff/ids.ts';
import type { JsonText } from '../../text/fit.ts';
import { printJson } from '../../text/json.ts';
import { lengthJson, type LengthJson } from '../amounts-json.ts';
import { roomHead } from '../house-json.ts';
import type { House, RoomPieces } from '../house.ts';
import type { Files } from '../look.ts';
import { sourceJson } from '../place-json.ts';
import { standingJson } from '../standing-json.ts';
import { standingOfRooms } from '../standing.ts';
import type { RoomBench } from './content.ts';
import type { BenchBoardJson, BenchJson, GaugeJson } from './shape.ts';

export function jsonBench(houses: readonly House[], benchOf: (room: RoomPieces) => RoomBench | undefined, files: Files): JsonText {
    return printJson<BenchJson>({
        version: 1, kind: 'cofferwright.bench', standing: standingJson(standingOfRooms(houses.flatMap(({ rooms }) => rooms))),
        rooms: houses.flatMap(({ job, rooms }) => rooms.map(room => {
            const { boards = [], drifts = [] } = benchOf(room) ?? {};
            return {
                ...roomHead(room, room.takeOff !== undefined, job, files),
                boards: boards.map(one => boardJson(one, job, files)), gauges: drifts.map(one => gaugeJson(one, job, files)),
            };
        })),
    });
}

function boardJson({ board, off, spoils, mayGo, takes, recut }: BoardAtBench, { show }: JobSettings, files: Files): BenchBoardJson {
    const length = (ticks: number): LengthJson => lengthJson(ticks, ticks, show.value);
    const some = (ticks: number | undefined): LengthJson | null => (ticks === undefined ? null : length(ticks));
    return {
        name: board.name, stock: board.stock.value.name, source: sourceJson(board.at, files),
        off: { width: some(off.width), thickness: some(off.thickness), rabbet: some(off.rabbet) },
        spoils: [...spoils].map(([why, pieces]) => ({ why, pieces: pieces.map(nameInRoom) })), mayGo: mayGo.map(nameInRoom), takes: takes.map(nameInRoom),
        recut: recut.map(({ piece, wrong, from }) => ({
            piece: nameInRoom(piece), why: wrong, from: from && { what: from.what, length: length(from.length), source: sourceJson(from.at, files) },
        })),
    };
}

function gaugeJson({ log, creeps, slope, chance, untilLook, untilScrap }: Drift, { show }: JobSettings, files: Files): GaugeJson {
    const length = (ticks: number): LengthJson => lengthJson(ticks, ticks, show.value), rounded = (value: number): number => Math.round(value * 1e6) / 1e6;
    return {
        of: log.of ?? null, meant: length(log.meant.value), readings: log.readings.map(length), every: log.every,
        creeps, ticksPerReading: rounded(slope), chance: rounded(chance),
        boardsUntilLook: untilLook ?? null, boardsUntilScrap: untilScrap ?? null, source: sourceJson(log.at, files),
    };
}
