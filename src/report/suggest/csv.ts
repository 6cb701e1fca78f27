import { printAmount } from '../../quantity/money.ts';
import type { Figures, Suggestions } from '../../suggest/model.ts';
import type { Cell } from '../../text/csv.ts';
import { rowOf } from '../../text/csv.ts';
import type { CsvText } from '../../text/fit.ts';
import { decimal, unitOf } from '../csv.ts';
import type { House, RoomPieces } from '../house.ts';
import { csvStanding } from '../standing.ts';

const HEADER = [
    'room', 'rank', 'coffers_north', 'coffers_east', 'through', 'unit', 'east_west_least', 'east_west_most', 'north_south_least', 'north_south_most',
    'unequal', 'off_square', 'errors', 'conflicts', 'joists', 'closing_pieces', 'boards', 'cost', 'currency', 'hours', 'write',
] as const;

/**
 * A row for the room as it stands, of rank 0, and one for each grid that is offered. Shares, not percents; money and hours only of what has a
 * price and a time.
 */
export function csvSuggestions(houses: readonly House[], of: (room: RoomPieces) => Suggestions): CsvText {
    return csvStanding(HEADER, houses.flatMap(({ job: { show }, rooms }) => rooms.map(room => {
        const { present, offers } = of(room), d = (ticks: number): number => decimal(ticks, show.value);
        const row = (rank: number, figures: Figures, write: string | null): Cell[] => {
            const { across, down, through, width, length, unequal, offSquare, errors, conflicts, joists, closing, boards, costs, minutes } = figures;
            const [cost] = costs.length === 1 ? costs : [];
            return rowOf(HEADER, {
                room: room.room.name, rank, coffers_north: across, coffers_east: down, through, unit: unitOf(show.value),
                east_west_least: d(width.least), east_west_most: d(width.most), north_south_least: d(length.least), north_south_most: d(length.most),
                unequal: Math.round(unequal * 10_000) / 10_000, off_square: Math.round(offSquare * 10_000) / 10_000,
                errors, conflicts, joists: joists ?? null, closing_pieces: closing ?? null, boards,
                cost: cost ? printAmount(cost.amount) : null, currency: cost?.currency ?? null,
                hours: minutes ? Math.round(minutes.div(60).valueOf() * 1000) / 1000 : null, write,
            });
        };
        const rows = offers.map(({ figures, says }, i) => row(i + 1, figures, says.join('; ')));
        return { standing: room.standing, rows: [...present ? [row(0, present, null)] : [], ...rows] };
    })));
}
