import type { Piece } from '../../takeoff/model.ts';
import type { BottomRun } from '../../takeoff/closing/bottoms.ts';
import { ringIn } from './web.ts';

/** One bottom that has to be up before another: it runs through where that one butts against it with biscuits. */
interface UpBefore { readonly piece: Piece; readonly before: Piece }

function upBefore(runs: readonly BottomRun[]): UpBefore[] {
    return runs.flat().flatMap(({ piece, ends }) => ends.flatMap(({ kind, sticksOut, against }) =>
        (kind === 'butt' && sticksOut > 0 ? against.map((through): UpBefore => ({ piece: through, before: piece })) : [])));
}

/** Bottoms of which each waits for the next, and the last for the first, so that none can go up first; null where there is an order. */
export function waitingRing(runs: readonly BottomRun[]): readonly Piece[] | null {
    const pieces = runs.flat().map(({ piece }) => piece), index = new Map(pieces.map((piece, i) => [piece, i]));
    const ring = ringIn(pieces.length, upBefore(runs).map(({ piece, before }) => [index.get(before)!, index.get(piece)!]));
    return ring && ring.map(i => pieces[i]!);
}
