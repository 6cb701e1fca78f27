import type { JobSettings } from '../../job/model.ts';
import { printJson } from '../../text/json.ts';
import type { JsonText } from '../../text/fit.ts';
import { lengthJson } from '../amounts-json.ts';
import { roomHead } from '../house-json.ts';
import type { House, RoomPieces } from '../house.ts';
import type { Files } from '../look.ts';
import { sourceJson } from '../place-json.ts';
import { standingJson } from '../standing-json.ts';
import { standingOfRooms } from '../standing.ts';
import type { TradeTask } from './content.ts';
import type { SpotJson, TaskJson, TradesJson } from './shape.ts';

export function jsonTrades(houses: readonly House[], tasksOf: (room: RoomPieces) => readonly TradeTask[] | undefined, files: Files): JsonText {
    return printJson<TradesJson>({
        version: 1, kind: 'cofferwright.trades', standing: standingJson(standingOfRooms(houses.flatMap(({ rooms }) => rooms))),
        rooms: houses.flatMap(({ job, rooms }) => rooms.map(room => ({
            ...roomHead(room, room.takeOff !== undefined, job, files),
            tasks: (tasksOf(room) ?? []).map(({ trade, of, kind, at, does, to, what, why, before, fixture }): TaskJson => ({
                trade, of, what: kind, at: spotJson(at, job), does, to: spotJson(to, job), words: what, why, before,
                source: fixture && sourceJson(fixture.at, files),
            })),
        }))),
    });
}

function spotJson(at: TradeTask['at'], { show }: JobSettings): SpotJson | null {
    const [x, y] = at ? [Math.round(at.x), Math.round(at.y)] : [0, 0];
    return at && { east: lengthJson(x, x, show.value), south: lengthJson(y, y, show.value) };
}
