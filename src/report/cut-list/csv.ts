import { cutAlready } from '../../cutting/as-cut.ts';
import { tapeOf } from '../../job/tape.ts';
import { whyText } from '../../provenance/why-text.ts';
import type { Stock } from '../../job/model.ts';
import { printLength, type Show, type Tape } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { isHanded } from '../../takeoff/cut-alike.ts';
import { endsFromTheLeft, miterAt, signedDegrees, toldLengths } from '../../takeoff/ends.ts';
import type { Piece } from '../../takeoff/model.ts';
import { decimal, unitOf } from '../csv.ts';
import type { Cell } from '../../text/csv.ts';
import type { House } from '../house.ts';
import type { Files } from '../look.ts';
import { sourceJson, type SourceJson } from '../place-json.ts';
import { csvStanding } from '../standing.ts';
import { endText } from './group.ts';
import { lowIn } from './low-in-room.ts';
import { stockNames } from '../../job/stock-names.ts';
import type { CsvText } from '../../text/fit.ts';

/** A piece, and what its cells need to know of its house. */
interface InHouse {
    readonly piece: Piece; readonly isCut: boolean;
    /** What a spacer under a low place of the ceiling is cut to. */
    readonly low: Ticks | undefined;
    readonly tape: Tape; readonly show: Show; readonly nameOf: (stock: Stock) => string; readonly source: SourceJson;
}

/** The columns in their order; `back` and `face` are the cut lengths as numbers in `unit`, beside them as they are read. */
const COLUMNS: Readonly<Record<string, (of: InHouse) => Cell>> = {
    id: ({ piece }) => piece.id, room: ({ piece }) => piece.room, part: ({ piece }) => piece.part, line: ({ piece }) => piece.line,
    bay: ({ piece }) => piece.bay, coffer: ({ piece }) => piece.coffer, on: ({ piece }) => piece.on, stock: ({ piece, nameOf }) => nameOf(piece.stock),
    unit: ({ show }) => unitOf(show),
    back: ({ piece, show }) => decimal(toldLengths(piece).back, show), face: ({ piece, show }) => decimal(toldLengths(piece).face, show),
    overall: ({ piece, show }) => decimal(piece.cutOverall, show), overall_text: ({ piece, show }) => printLength(piece.cutOverall, show),
    back_text: ({ piece, show }) => printLength(toldLengths(piece).back, show), face_text: ({ piece, show }) => printLength(toldLengths(piece).face, show),
    west_or_north_end: ({ piece }) => endText(piece, piece.ends[0]), east_or_south_end: ({ piece }) => endText(piece, piece.ends[1]),
    left_end: ({ piece }) => endText(piece, endsFromTheLeft(piece)[0]), right_end: ({ piece }) => endText(piece, endsFromTheLeft(piece)[1]),
    left_degrees: ({ piece }) => signedDegrees(endsFromTheLeft(piece)[0]), right_degrees: ({ piece }) => signedDegrees(endsFromTheLeft(piece)[1]),
    hand: ({ piece }) => miterAt(piece), handed: ({ piece }) => (piece.hand !== null || isHanded(piece) ? 'yes' : 'no'),
    width: ({ piece, show }) => decimal(piece.width, show), thickness: ({ piece, show }) => decimal(piece.thickness, show),
    ripped: ({ piece }) => (piece.ripped ? 'yes' : 'no'), machining: ({ piece }) => piece.machining.join('; '), where: ({ piece }) => piece.where,
    why: ({ piece, tape }) => whyText(piece.why, piece.cutBack, tape),
    cut: ({ isCut }) => (isCut ? 'yes' : 'no'), file: ({ source }) => source.file, source_line: ({ source }) => source.line, source_column: ({ source }) => source.column,
    lower_to: ({ low, show }) => (low === undefined ? null : decimal(low, show)),
    lower_to_text: ({ low, show }) => (low === undefined ? null : printLength(low, show)),
};

/** A row a piece. */
export function csvCutList(houses: readonly Pick<House, 'job' | 'rooms'>[], files: Files): CsvText {
    const nameOf = stockNames(houses.flatMap(({ rooms }) => rooms.flatMap(({ takeOff }) => takeOff?.pieces.map(({ stock }) => stock) ?? [])));
    const rowOf = (piece: Piece, tape: Tape, isCut: boolean, low: Ticks | undefined): Cell[] =>
        Object.values(COLUMNS).map(cell => cell({ piece, tape, show: tape.show, nameOf, source: sourceJson(piece.source, files), isCut, low }));
    return csvStanding(Object.keys(COLUMNS), houses.flatMap(({ job, rooms }) => rooms.map(one => {
        const { room, takeOff, standing } = one, pieces = takeOff?.pieces ?? [], cut = cutAlready(room, pieces), low = lowIn([one]);
        return { standing, rows: pieces.map(piece => rowOf(piece, tapeOf(job), cut.has(piece), low.get(piece.id))) };
    })));
}
