import { roughWidth } from '../takeoff/rough-width.ts';
import type { Piece } from '../takeoff/model.ts';
import type { Work } from '../takeoff/work.ts';
import { hasItsEnds, recordOf, usableFor } from './as-cut.ts';

/** What a piece takes of its wood, in square ticks. */
export function areaOf(piece: Piece): number {
    return piece.cutOverall * roughWidth(piece);
}

/** How an old piece of the same wood becomes a new one; undefined where it cannot. */
export function canBecome(old: Piece, wanted: Piece): 'keep' | 'trim' | 'rip' | undefined {
    const record = recordOf(old), width = roughWidth(old), narrower = roughWidth(wanted);
    if (old.thickness !== wanted.thickness || width < narrower || usableFor(wanted, record) < wanted.cutOverall) return undefined;
    // on a fresh edge nothing is machined any more, but nobody rips off just the edge that has a groove: it is taken as it is or not at all
    const edges = edgeWork(old), isRipped = width > narrower;
    if (isRipped ? edges.length > 0 : edges.some(work => !edgeWork(wanted).includes(work))) return undefined;
    if (isRipped) return 'rip';
    return record.length === wanted.cutOverall && hasItsEnds(wanted, record) ? 'keep' : 'trim';
}

/**
 * Of pieces that are cut: as much wood as is saved, first of all; of what saves as much, what stays as it is, the same part, in its place.
 * 0: it cannot become that.
 */
export function gainOfCut(piece: Piece, wanted: Piece): number {
    const how = canBecome(piece, wanted);
    if (how === undefined) return 0;
    return 8 * areaOf(wanted) + (how === 'keep' ? 4 : 0) + (piece.part === wanted.part ? 2 : 0) + (piece.id === wanted.id ? 1 : 0);
}

/** What is done along its edges: it stays there when an end is cut off. Slots and holes of an end go with it, and are cut again. */
export function edgeWork({ work }: Piece): string[] {
    return work.filter(({ kind }) => EDGES.has(kind)).map(each => JSON.stringify(each));
}
const EDGES: ReadonlySet<Work['kind']> = new Set(['rabbet', 'ease']);
