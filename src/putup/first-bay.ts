import { arrangedOf } from '../ceiling/plan.ts';
import type { Ceiling } from '../ceiling/model.ts';
import type { TakeOff } from '../takeoff/model.ts';
import type { FirstBay } from './model.ts';

/**
 * The coffer that is tried first: the first of those with beams on most of its edges, so that it tells of the beams and not of the walls. For it
 * are cut its sides and cleats, those across from them in the same bays, so that the bottom's channel is there to be measured, and the spacers between.
 */
export function firstBayOf(ceiling: Ceiling, { pieces }: TakeOff): FirstBay | null {
    const lines = new Set(ceiling.lines.map(({ name }) => name));
    const beams = arrangedOf(ceiling).exact.coffers.map(({ number, edges }) =>
        ({ number, count: edges.filter(({ along }) => along.some(of => lines.has(of))).length }));
    const said = ceiling.room.putUp?.firstBay, own = said && beams.find(({ number }) => number === said.value);
    const most = Math.max(...beams.map(({ count }) => count)), chosen = own ?? beams.find(({ count }) => count === most);
    if (!chosen || chosen.count === 0) return null;
    const sides = pieces.filter(({ part, coffer }) => part === 'side' && coffer === chosen.number);
    const bays = new Set(sides.flatMap(({ line, bay }) => (line !== null && bay !== null ? [`${line} ${bay}`] : [])));
    const tried = pieces.filter(piece => (piece.part === 'side' || piece.part === 'cleat') && piece.coffer === chosen.number
        || (piece.part === 'side' || piece.part === 'cleat' || piece.part === 'spacer') && piece.line !== null && piece.bay !== null && bays.has(`${piece.line} ${piece.bay}`));
    return tried.length === 0 ? null : { coffer: chosen.number, pieces: tried.map(({ id }) => id), ...own && { at: said.at } };
}
