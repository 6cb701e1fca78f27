import type { JobSettings } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { acrossOf } from '../takeoff/ends.ts';
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
    if (old.thickness !== wanted.thickness || width < narrower || usableFor(wanted, record, acrossOf(old)) < wanted.cutOverall) return undefined;
    // on a fresh edge nothing is machined any more, but nobody rips off just the edge that has a groove: it is taken as it is or not at all
    const edges = edgeWork(old), isRipped = width > narrower;
    if (isRipped ? edges.length > 0 : edges.some(work => !edgeWork(wanted).includes(work))) return undefined;
    if (isRipped) return 'rip';
    return record.length === wanted.cutOverall && hasItsEnds(wanted, record) ? 'keep' : 'trim';
}

/** All that `canBecome` and `areaOf` go by, of either piece, and its part. */
export function becomingKey(piece: Piece): string {
    return JSON.stringify([piece.part, piece.thickness, roughWidth(piece), acrossOf(piece), recordOf(piece), edgeWork(piece)]);
}

/** Which share of its wood's worth an offcut keeps, and how long it has to be. */
interface Offcuts { readonly share: number; readonly shortest: Ticks }
export function offcutsOf({ offcutWorth, shortestOffcut }: Pick<JobSettings, 'offcutWorth' | 'shortestOffcut'>): Offcuts {
    return { share: offcutWorth?.value.valueOf() ?? 0, shortest: shortestOffcut.value };
}

/** What is left at its full width of one that is cut shorter, and worth keeping. */
export function restOf({ cutOverall: length }: Piece, wanted: Piece, { shortest }: Offcuts): Ticks {
    const rest = length - wanted.cutOverall;
    return rest >= shortest ? rest : 0;
}

/**
 * Of pieces that are cut: as much of the wood's worth as is saved, first of all, what is left of it as an offcut included; of what saves as much, what stays as
 * it is, the same part, in its place. 0: it cannot become that, or is worth as much as an offcut.
 */
export function gainOfCut(piece: Piece, wanted: Piece, offcuts: Offcuts): number {
    const how = canBecome(piece, wanted), { cutOverall: length } = piece;
    if (how === undefined) return 0;
    const asOffcut = offcuts.share * roughWidth(piece) * ((length >= offcuts.shortest ? length : 0) - restOf(piece, wanted, offcuts));
    const saved = Math.floor(areaOf(wanted) - asOffcut);
    if (saved <= 0 && how !== 'keep') return 0;
    return 8 * Math.max(0, saved) + (how === 'keep' ? 4 : 0) + (piece.part === wanted.part ? 2 : 0) + (piece.id === wanted.id ? 1 : 0);
}

/** What is done along its edges: it stays there when an end is cut off. Slots and holes of an end go with it, and are cut again. */
export function edgeWork({ work }: Piece): string[] {
    return work.filter(({ kind }) => EDGES.has(kind)).map(each => JSON.stringify(each));
}
const EDGES: ReadonlySet<Work['kind']> = new Set(['rabbet', 'ease']);
