import type { Board, BoardPlan, Strip } from '../cutting/model.ts';
import type { JobSettings, Stock } from '../job/model.ts';
import { roundDown } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import { comparePieces } from '../takeoff/piece-order.ts';
import { miterCount } from './lie.ts';
import type { LaidBoard, LaidPiece, LaidStrip } from './model.ts';
import { stockNames } from '../job/stock-names.ts';
import { endsFromTheLeft } from '../takeoff/ends.ts';
import { longPoints } from '../takeoff/long-points.ts';

/**
 * Every board of a plan with the readings of a tape hooked on its left end. On a board the longest piece lies first, so
 * that the stop, set from long to short, always finds its piece at the end that is being cut.
 */
export function layBoards(plan: BoardPlan, job: JobSettings): LaidBoard[] {
    const nameOf = stockNames(plan.stocks.map(({ stock }) => stock));
    return plan.stocks.flatMap(({ stock, boards }) => boards.map(board => layBoard(board, stock, nameOf(stock), job)));
}

export function boardName(stock: Pick<Stock, 'name'>, number: number): string {
    return `${stock.name} #${number}`;
}

function layBoard(board: Board, stock: Stock, name: string, job: JobSettings): LaidBoard {
    const ripped = board.strips.flatMap(strip => strip.rippedTo ?? []);
    const taken = ripped.reduce((sum, width) => sum + width + job.kerf.value, 0);
    const width = stock.width?.value.ticks;
    const [along, across] = board.crosswise && width !== undefined ? [width, board.length] : [board.length, width ?? taken];
    return {
        name: boardName({ name }, board.number), stock, number: board.number, length: board.length, along, from: board.from,
        strips: board.strips.map((strip, i) => layStrip(strip, i + 1, along, board, job)),
        besideStrips: ripped.length === 0 ? 0 : Math.max(0, across - taken),
    };
}

function layStrip(strip: Strip, number: number, along: Ticks, board: Board, job: JobSettings): LaidStrip {
    const kerf = job.kerf.value;
    const trim = Math.floor(job.endTrim.value / 2);
    const over = blankOver(board.cut, job);
    let at = trim;
    const pieces = [...strip.pieces].sort((a, b) => blankLength(b, over) - blankLength(a, over) || comparePieces(a, b)).map((piece): LaidPiece => {
        const from = at;
        const to = from + blankLength(piece, over);
        at = to + kerf;
        return { piece, from, to, ends: endsFromTheLeft(piece) };
    });
    return {
        number, ...strip.rippedTo !== undefined && { rippedTo: strip.rippedTo }, trim, pieces,
        offcut: strip.offcut, kept: strip.kept, rest: along - at,
    };
}

/** Between its long points, and what the blank of a mitered piece is cut longer. */
export function blankLength(piece: Piece, over: Ticks): Ticks {
    return longPoints(piece) + (miterCount(piece) === 0 ? 0 : over);
}
/**
 * What a mitered piece's blank is cut longer, so that its miters are cut into fresh wood. The plan reckons a slanted kerf
 * for every piece, and a square cut takes less: the difference, on the tape's divisions, is there to be used.
 */
export function blankOver(cut: Ticks, job: JobSettings): Ticks {
    return Math.max(0, roundDown(cut - job.kerf.value, job.cutTo.value));
}

