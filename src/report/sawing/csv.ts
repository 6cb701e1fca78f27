import { tapeOf } from '../../job/tape.ts';
import { printMark } from '../../quantity/print-length.ts';
import { tapingOf, tapingWords } from '../../sawing/index.ts';
import { decimal, unitOf } from '../csv.ts';
import type { Cell } from '../../text/csv.ts';
import { titleOf } from '../house.ts';
import { endText } from '../cut-list/group.ts';
import { csvStanding, standingOfRooms } from '../standing.ts';
import type { HouseSaw } from './house-saw.ts';
import { stockNames } from '../../job/stock-names.ts';
import type { CsvText } from '../../text/fit.ts';

const HEADER = [
    'job', 'step', 'stop', 'stock', 'board', 'strip', 'place', 'piece', 'unit', 'from', 'to', 'back', 'face', 'stop_text', 'from_text', 'to_text', 'back_text', 'face_text',
    'left_end', 'right_end', 'hand', 'measure', 'then',
];

/** A row for every crosscut in the order of the saw, with the readings of its marks on its board. */
export function csvSaw(houses: readonly HouseSaw[]): CsvText {
    return csvStanding(HEADER, houses.map(({ house, order }) => ({ standing: standingOfRooms(house.rooms), rows: order.steps.flatMap(step => (step.do !== 'crosscut' ? [] : step.takes.flatMap(({ board, strip, pieces }) => pieces.map((laid): Cell[] => {
        const show = house.job.show.value;
        const { piece } = laid;
        const lengths = [laid.from, laid.to, piece.cutBack, piece.cutFace];
        return [
            titleOf(house.job), step.number, decimal(step.stop, show), stockNames(order.boards.map(({ stock }) => stock))(board.stock), board.number, strip.rippedTo === undefined ? null : strip.number, strip.pieces.indexOf(laid) + 1,
            piece.id, unitOf(show), ...lengths.map(ticks => decimal(ticks, show)), ...[step.stop, ...lengths].map(ticks => printMark(ticks, tapeOf(house.job))),
            endText(laid.ends[0]), endText(laid.ends[1]), piece.hand, tapingWords(tapingOf(piece)), piece.machining.join('; '),
        ];
    })))) })));
}
