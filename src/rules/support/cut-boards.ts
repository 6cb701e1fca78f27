import type { CutBoard, JobSettings } from '../../job/model.ts';
import { printLength } from '../../quantity/print-length.ts';
import { piecesNamed } from '../../takeoff/ids.ts';
import type { Piece } from '../../takeoff/model.ts';

/** The pieces that came out of a board, as far as their names are in the cut list. */
export function piecesOut(board: CutBoard, pieces: readonly Piece[]): Piece[] {
    return piecesNamed(board.into.map(({ value }) => value), pieces);
}

/** `16' of poplar-1x6`. */
export function boardWords({ length, stock }: CutBoard, job: JobSettings): string {
    return `${printLength(length.value, job.show.value)} of ${stock.value.name}`;
}
