import { gathered } from '../ceiling/derived.ts';
import type { Stock } from '../job/model.ts';
import type { Given, Source } from '../provenance/source.ts';
import type { WhyTerm } from '../provenance/why.ts';
import { roundDown } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { miterAt } from './ends.ts';
import { idOf, type Place } from './ids.ts';
import { boxAround, inTicks, SQUARE } from './lie.ts';
import type { Corners, EndCut, Part, Piece } from './model.ts';
import type { Setting } from './setting.ts';
import { roughThickness, roughWidth } from './rough-width.ts';
import { workWords, type Work } from './work.ts';

const BOTH_SQUARE: Piece['ends'] = [SQUARE, SQUARE];
const MEETS_NOTHING: Piece['meets'] = [null, null];

/** A piece as its part makes it; the rest follows. */
interface Draft extends Place {
    readonly part: Part;
    readonly stock: Given<Stock> | undefined;
    /** Hidden back (long points), and visible face (short points) where it is shorter. May be a fraction of a tick off whole. */
    readonly back: number; readonly face?: number;
    /** From the first of its corners to the last, where that is more than either edge. */
    readonly overall?: number;
    /** The same with the coffers at the size they are cut to; may be half a tick off whole. Not said: as it stands. */
    readonly cutBack?: number; readonly cutFace?: number; readonly cutOverall?: number;
    readonly ends?: readonly [EndCut, EndCut];
    readonly meets?: Piece['meets'];
    readonly width: Ticks; readonly thickness: Ticks;
    readonly stands?: Piece['stands']; readonly lies?: boolean;
    readonly scribe?: Ticks;
    /** What is done to it besides ripping. */
    readonly work?: readonly (Work | false | undefined)[];
    /** The name of the fence setting it is ripped at. */
    readonly fence?: string;
    readonly where: string;
    /** Terms that add up to the back. */
    readonly why: readonly WhyTerm[];
    readonly source: Source;
    /** Its place on the plan: along the back, the end to the west or north first, then back along the face. Down from the ceiling: its top and its foot. */
    readonly corners: Corners;
    readonly outline?: Piece['outline'];
    readonly heights: readonly [Ticks, Ticks];
}

/**
 * The finished piece, or nothing where it has no stock or no length. Cut lengths are rounded here and nowhere else, so
 * that pieces of one length are cut at one setting of the stop; and down, to the last mark of the tape that goes into its place,
 * so that no row of pieces is longer than the room. A board ripped narrower is told first in its machining.
 */
export function pieceOf(draft: Draft, { ceiling, step, size }: Setting): Piece[] {
    const { part, width, thickness, where, source, heights } = draft, corners = inTicks(draft.corners);
    const back = Math.round(draft.back);
    const stock = draft.stock?.value;
    if (!stock || !(back > 0)) return [];
    const face = Math.round(draft.face ?? back);
    const cutBack = draft.cutBack ?? draft.back, cutFace = draft.cutFace ?? cutBack;
    const overall = Math.max(draft.overall ?? 0, draft.face ?? 0, draft.back), cutOverall = Math.max(draft.cutOverall ?? 0, cutFace, cutBack);
    const full = stock.width?.value.ticks;
    const ripped = full !== undefined && roughWidth(draft) < full || isRippedThrough(draft, stock);
    const work: Work[] = part === 'cleat' || ripped ? [ripTo(draft)] : [];
    for (const each of draft.work ?? []) if (each) work.push(each);
    if (draft.scribe) work.push({ kind: 'scribe', by: draft.scribe });
    // without a groove or a profile a piece may be turned round
    const ends = draft.ends ?? BOTH_SQUARE, keepsItsHand = part === 'molding' || draft.stands !== undefined || work.some(({ kind }) => kind === 'rabbet');
    return [{
        id: idOf(ceiling.room.name, part, draft), room: ceiling.room.name, part,
        line: draft.line ?? null, bay: draft.bay ?? null, coffer: draft.coffer ?? null, on: draft.on ?? draft.wall ?? null, stock,
        face, back, cutFace: roundDown(cutFace, step), cutBack: roundDown(cutBack, step), overall: Math.round(overall), cutOverall: roundDown(cutOverall, step),
        ends, meets: draft.meets ?? MEETS_NOTHING, hand: keepsItsHand ? miterAt({ part, lies: draft.lies, ends, corners, work }) : null,
        width, thickness, ripped, ...draft.stands && { stands: draft.stands }, ...draft.lies && { lies: true }, ...draft.scribe && { scribe: draft.scribe },
        work, machining: work.map(each => workWords(each, size)),
        where, why: { terms: gathered(draft.why) }, source, corners, ...draft.outline && { outline: draft.outline }, box: boxAround(corners, heights),
    }];
}

/** A timber along a wall that is narrower than its stock is thick. */
function isRippedThrough(draft: Draft, { thickness }: Stock): boolean {
    return draft.part === 'timber' && thickness !== undefined && roughThickness(draft) < thickness.value.ticks;
}

/** A cleat is ripped both ways, and so is half of a timber. */
function ripTo(draft: Draft): Work {
    const { part, fence, stock } = draft, width = roughWidth(draft), thickness = roughThickness(draft);
    const rip: Work = part === 'cleat' || stock && isRippedThrough(draft, stock.value) ? { kind: 'rip', width, thickness } : { kind: 'rip', width };
    return fence === undefined ? rip : { ...rip, fence };
}
