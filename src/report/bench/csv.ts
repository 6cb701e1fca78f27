import { nameInRoom } from '../../takeoff/ids.ts';
import { rowOf, type Cell } from '../../text/csv.ts';
import type { CsvText } from '../../text/fit.ts';
import { decimal, unitOf } from '../csv.ts';
import type { House, RoomPieces } from '../house.ts';
import { csvStanding } from '../standing.ts';
import type { RoomBench } from './content.ts';

const HEADER = ['room', 'what', 'name', 'stock', 'piece', 'why', 'unit', 'figure', 'boards', 'from'] as const;

/**
 * A row for each figure of a board that is off (`off`), for each piece that it is spoiled for (`spoiled`), may still go into (`may-go`) and that is cut again
 * (`recut`); of a gauge for its rate a reading (`creeps`) and how many more boards it has (`look`, `scrap`).
 */
export function csvBench(houses: readonly House[], benchOf: (room: RoomPieces) => RoomBench | undefined): CsvText {
    return csvStanding(HEADER, houses.flatMap(({ job: { show: { value: show } }, rooms }) => rooms.map(room => {
        const { boards = [], drifts = [] } = benchOf(room) ?? {}, length = (ticks: number): number => decimal(ticks, show);
        const ofBoards = boards.flatMap(({ board, off, spoils, mayGo, recut }) => {
            const rows: Row[] = [
                ...(['width', 'thickness', 'rabbet'] as const).flatMap(why => (off[why] ? [{ what: 'off', why, figure: length(off[why]) }] : [])),
                ...[...spoils].flatMap(([why, pieces]) => pieces.map(piece => ({ what: 'spoiled', why, piece: nameInRoom(piece) }))),
                ...mayGo.map(piece => ({ what: 'may-go', piece: nameInRoom(piece), figure: length(piece.cutOverall) })),
                ...recut.map(({ piece, wrong, from }) => ({ what: 'recut', why: wrong, piece: nameInRoom(piece), from: from?.what ?? 'new board', ...from && { figure: length(from.length) } })),
            ];
            return rows.map(row => ({ name: board.name, stock: board.stock.value.name, ...row }));
        });
        const ofGauges = drifts.flatMap(({ log, creeps, slope, untilLook, untilScrap }): Row[] => {
            const name = log.of ?? 'gauge';
            return [
                { what: creeps ? 'creeps' : 'no-trend', name, figure: length(slope) },
                ...untilLook === undefined ? [] : [{ what: 'look', name, boards: untilLook }], ...untilScrap === undefined ? [] : [{ what: 'scrap', name, boards: untilScrap }],
            ];
        });
        return { standing: room.standing, rows: [...ofBoards, ...ofGauges].map(row => rowOf(HEADER, { room: room.room.name, unit: unitOf(show), ...row })) };
    })));
}
type Row = Partial<Record<typeof HEADER[number], Cell>>;
