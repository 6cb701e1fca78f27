import type { JobSettings } from '../job/model.ts';
import { printLength } from '../quantity/print-length.ts';
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import { degreesOf } from '../takeoff/ends.ts';
import { roughWidth } from '../takeoff/rough-width.ts';
import { longPoints } from '../takeoff/long-points.ts';

/** What a piece takes of a board before it is cut to length. */
export interface Blank {
    readonly piece: Piece;
    /** Between the long points. */
    readonly length: Ticks;
    /** Across the board. */
    readonly width: Ticks;
    /** How many come out of the board's width side by side. */
    readonly abreast: number;
}

/** The blank of a piece, or in words why it cannot come out of its stock. */
export function blankOf(piece: Piece, job: JobSettings): Blank | string {
    const length = longPoints(piece);
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
    const { thickness } = piece, width = roughWidth(piece);
    if (boardThickness === undefined || thickness === boardThickness) return width;
    if (width === boardThickness) return thickness;
    if (thickness <= boardThickness) return width;
    return width <= boardThickness ? thickness : undefined;
}

/**
 * What one cut takes along the board: the kerf over the cosine of the steepest miter, since a saw at 45 degrees leaves a
 * slot that is longer by 1.414 on the face. One figure for a stock, so that any piece may lie beside any other; it is
 * rounded up to the finest a tape is read to, 1/128" or 0.1 mm.
 */
export function cutAlong(pieces: readonly Piece[], job: JobSettings): Ticks {
    let steepest = 0;
    for (const piece of pieces)
        for (const end of piece.ends)
            if (Math.abs(degreesOf(end)) > steepest && Math.abs(degreesOf(end)) < 90) steepest = Math.abs(degreesOf(end));
    const finest = job.show.value === 'millimeters' ? TICKS_PER_MM / 10 : TICKS_PER_INCH / 128;
    return Math.ceil(job.kerf.value / Math.cos(steepest * Math.PI / 180) / finest - 1e-9) * finest;
}
