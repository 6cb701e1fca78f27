import type { JobSettings } from '../job/model.ts';
import { printLength } from '../quantity/print-length.ts';
import { roundDown, roundUp } from '../quantity/round.ts';
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import { degreesOf } from '../takeoff/ends.ts';
import { roughThickness, roughWidth } from '../takeoff/rough-width.ts';
import { mayBeCutOnce } from './cut-once.ts';

/** What a piece takes of a board before it is cut to length. */
export interface Blank {
    readonly piece: Piece;
    /** As long as its blank: between the long points, and what it is longer. */
    readonly length: Ticks;
    /** Across the board. */
    readonly width: Ticks;
    /** How many come out of the board's width side by side. */
    readonly abreast: number;
}

/** The blank of a piece, or in words why it cannot come out of its stock. */
export function blankOf(piece: Piece, job: JobSettings): Blank | string {
    const length = blankLength(piece, job);
    if (!(length > 0) || !Number.isFinite(length)) return 'it has no length';
    const show = (ticks: Ticks): string => printLength(ticks, job.show.value);
    const boardWidth = piece.stock.width?.value.ticks;
    const boardThickness = piece.stock.thickness?.value.ticks;
    const width = widthAcross(piece, boardThickness);
    if (width === undefined) return `it is ${show(Math.min(piece.width, piece.thickness))} thick, and ${piece.stock.name} is ${show(boardThickness!)}`;
    if (boardWidth === undefined) return { piece, length, width, abreast: 1 };
    if (width > boardWidth) return `it is ${show(width)} wide, and ${piece.stock.name} is ${show(boardWidth)}`;
    return { piece, length, width, abreast: width === boardWidth ? 1 : Math.max(1, stripsAcross(boardWidth, width, job.kerf.value)) };
}

/** How many strips of a width come out of a board's width: n strips take n - 1 kerfs. */
export function stripsAcross(boardWidth: Ticks, strip: Ticks, kerf: Ticks): number {
    return strip > 0 ? Math.floor((boardWidth + kerf) / (strip + kerf)) : 0;
}

/**
 * Which of the piece's two dimensions lies across the board. A strip ripped off on edge (a 1/2" x 3/4" cleat from a
 * 3/4" board) has the board's thickness as its width. Undefined where the board is too thin for either.
 */
function widthAcross(piece: Piece, boardThickness: Ticks | undefined): Ticks | undefined {
    const thickness = roughThickness(piece), width = roughWidth(piece);
    if (boardThickness === undefined || thickness === boardThickness) return width;
    if (width === boardThickness) return thickness;
    if (thickness <= boardThickness) return width;
    return width <= boardThickness ? thickness : undefined;
}

/** Between its long points, and what its blank is cut longer. */
export function blankLength(piece: Piece, job: JobSettings): Ticks {
    return piece.cutOverall + blankOver(piece, job);
}

/**
 * What a mitered piece's blank is cut longer, so that its miters are cut into fresh wood: a blade at 45 degrees leaves a slot that is
 * longer by 1.414 on the face than the kerf of the square cut beside it. By the steepest of its own miters, down to a division of the
 * tape; 0 where it has none. What lies beside it on the board loses nothing by it. And what the cut takes that parts a piece in two.
 * Where it is cut straight from its board the next piece begins beyond the whole slot: there it is rounded up to the tape.
 */
export function blankOver(piece: Piece, job: JobSettings): Ticks {
    const { ends, work } = piece;
    const halved = work.some(({ kind }) => kind === 'halve') ? job.kerf.value : 0;
    const steepest = Math.max(0, ...ends.map(end => Math.abs(degreesOf(end))).filter(degrees => degrees < 90));
    if (steepest === 0) return halved;
    const finest = job.show.value === 'millimeters' ? TICKS_PER_MM / 10 : TICKS_PER_INCH / 128;
    const along = Math.ceil(job.kerf.value / Math.cos(steepest * Math.PI / 180) / finest - 1e-9) * finest;
    const over = Math.max(0, along - job.kerf.value);
    return halved + (mayBeCutOnce(piece, job) ? roundUp : roundDown)(over, job.cutTo.value);
}
