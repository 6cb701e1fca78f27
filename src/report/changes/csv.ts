import type { HouseChange } from '../../changes/model.ts';
import type { Piece } from '../../takeoff/model.ts';
import { printAmount } from '../../quantity/money.ts';
import { printLength } from '../../quantity/print-length.ts';
import { rowOf, type Cell } from '../../text/csv.ts';
import type { CsvText } from '../../text/fit.ts';
import { standingTogether } from '../../pipeline/standing.ts';
import { decimal, unitOf } from '../csv.ts';
import { csvStanding, standingOfRooms } from '../standing.ts';
import type { Compared } from './state.ts';
import { jobOf } from './words.ts';

const HEADER = [
    'house', 'what', 'before', 'after', 'room', 'part', 'stock', 'unit', 'length_before', 'length_after', 'length_before_text', 'length_after_text', 'worth', 'saved', 'currency',
] as const;
type Cells = Readonly<Partial<Record<(typeof HEADER)[number], Cell>>>;

/** A row for every piece of either state that is not the same in both, and one for every piece that is cut already. */
export function csvChanges({ before, after, changes }: Compared): CsvText {
    const standing = standingTogether([before, after].map(({ rooms }) => standingOfRooms(rooms)));
    return csvStanding(HEADER, [{ standing, rows: changes.houses.flatMap(house => rowsOf(house).map(cells => rowOf(HEADER, cells))) }]);
}

function rowsOf(house: HouseChange): Cells[] {
    const { pieces, cut } = house, job = jobOf(house), show = job.show.value, title = job.title?.value ?? null;
    const row = (what: string, was: Piece | undefined, is: Piece | undefined): Cells => {
        const piece = (is ?? was)!;
        return {
            house: title, what, before: was ? was.id : null, after: is ? is.id : null,
            room: piece.room, part: piece.part, stock: piece.stock.name, unit: unitOf(show),
            ...was && { length_before: decimal(was.cutOverall, show), length_before_text: printLength(was.cutOverall, show) },
            ...is && { length_after: decimal(is.cutOverall, show), length_after_text: printLength(is.cutOverall, show) },
        };
    };
    return [
        ...pieces.moved.map(pair => row('elsewhere', pair.before, pair.after)), ...pieces.from.map(pair => row('from an old one', pair.before, pair.after)),
        ...pieces.fresh.map(piece => row('new', undefined, piece)), ...pieces.gone.map(piece => row('no longer wanted', piece, undefined)),
        ...cut.wood.map(({ room, name, stock, length, fate, into, worth, saved }): Cells => ({
            house: title, what: `cut already: ${fate}`, before: `${room}.${name}`, after: into ? into.id : null,
            room, part: into?.part ?? null, stock: stock.name, unit: unitOf(show),
            length_before: decimal(length, show), length_before_text: printLength(length, show),
            ...into && { length_after: decimal(into.cutOverall, show), length_after_text: printLength(into.cutOverall, show) },
            ...worth && { worth: printAmount(worth.amount), currency: worth.currency },
            ...saved && { saved: printAmount(saved.amount) },
        })),
    ];
}
