import type { CsvText } from '../../text/fit.ts';
import { rowOf, type Cell } from '../../text/csv.ts';
import { decimal, unitOf } from '../csv.ts';
import type { House, RoomPieces } from '../house.ts';
import { csvStanding } from '../standing.ts';
import type { RoomSeasons } from './content.ts';

const HEADER = ['room', 'lines', 'joint', 'unit', 'as_built', 'driest', 'dampest', 'moisture_start', 'moisture_driest', 'moisture_dampest'] as const;

/** A row for each kind of joint of each kind of beam. */
export function csvSeasons(houses: readonly House[], seasonsOf: (room: RoomPieces) => RoomSeasons | undefined): CsvText {
    return csvStanding(HEADER, houses.flatMap(({ job: { show }, rooms }) => rooms.map(room => {
        const seasons = seasonsOf(room), d = (by: number): number => decimal(Math.round(by), show.value);
        return {
            standing: room.standing,
            rows: seasons?.moving.flatMap(({ lines, play, butt, corner }): Cell[][] => {
                const { start, driest, dampest } = seasons.year;
                const [at, dry, damp] = [start, driest, dampest].map(percent => Math.round(percent * 100) / 100);
                const moisture = { moisture_start: at!, moisture_driest: dry!, moisture_dampest: damp! };
                const row = (of: readonly string[], joint: string, built: number, change: typeof corner): Cell[] => rowOf(HEADER, {
                    room: room.room.name, lines: of.join(' '), joint, unit: unitOf(show.value), as_built: d(built), driest: d(change.driest), dampest: d(change.dampest), ...moisture,
                });
                const names = lines.map(({ name }) => name);
                return [...play ? [row(names, 'play', play.built, play)] : [], ...butt ? [row(butt.at, 'butt', 0, butt)] : [], row(names, 'corner', 0, corner)];
            }) ?? [],
        };
    })));
}
