import { tapeOf } from '../../job/tape.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { printMark } from '../../quantity/print-length.ts';
import { cutOff, tapingOf, tapingWords } from '../../sawing/index.ts';
import { decimal, unitOf } from '../csv.ts';
import { rowOf, type Cell } from '../../text/csv.ts';
import { titleOf } from '../house.ts';
import { toldLengths } from '../../takeoff/ends.ts';
import { endText } from '../cut-list/group.ts';
import { csvStanding, standingOfRooms } from '../standing.ts';
import type { HouseSaw } from './house-saw.ts';
import { stockNames } from '../../job/stock-names.ts';
import type { CsvText } from '../../text/fit.ts';

const HEADER = [
    'job', 'step', 'stop', 'stock', 'board', 'strip', 'place', 'piece', 'unit', 'from', 'to', 'back', 'face',
    'stop_text', 'from_text', 'to_text', 'back_text', 'face_text',
    'left_end', 'right_end', 'hand', 'measure', 'then',
] as const;

type Row = Readonly<Partial<Record<(typeof HEADER)[number], Cell>>>;

/** A row for every piece that is cut off a board, in the order of the saw, with the readings of its marks on its board. */
export function csvSaw(houses: readonly HouseSaw[]): CsvText {
    return csvStanding(HEADER, houses.map(one => ({ standing: standingOfRooms(one.house.rooms), rows: rowsOf(one).map(row => rowOf(HEADER, row)) })));
}

function rowsOf({ house: { job }, order }: HouseSaw): Row[] {
    const show = job.show.value, nameOf = stockNames(order.boards.map(({ stock }) => stock));
    const number = (ticks: Ticks): number => decimal(ticks, show), text = (ticks: Ticks): string => printMark(ticks, tapeOf(job));
    return order.steps.flatMap(cutOff).flatMap(step => step.takes.flatMap(({ board, strip, pieces }) => pieces.map((laid): Row => {
        const { piece, from, to, ends } = laid, { back, face } = toldLengths(piece);
        return {
            job: titleOf(job), step: step.number, stock: nameOf(board.stock), board: board.number, strip: strip.rippedTo === undefined ? null : strip.number,
            place: strip.pieces.indexOf(laid) + 1, piece: piece.id, unit: unitOf(show),
            stop: number(step.stop), from: number(from), to: number(to), back: number(back), face: number(face),
            stop_text: text(step.stop), from_text: text(from), to_text: text(to), back_text: text(back), face_text: text(face),
            left_end: endText(piece, ends[0]), right_end: endText(piece, ends[1]), hand: piece.hand, measure: tapingWords(tapingOf(piece)), then: piece.machining.join('; '),
        };
    })));
}
