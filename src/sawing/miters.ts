import { atKey } from '../plain/at-key.ts';
import { grouped } from '../plain/groups.ts';
import { compareEach } from '../plain/order.ts';
import type { EndCut, FlatCut, Piece } from '../takeoff/model.ts';
import { comparePieces } from '../takeoff/piece-order.ts';
import { degreesOf, endsFromTheLeft, isTurned, liesFlat, sawDegrees } from '../takeoff/ends.ts';
import { handAtSaw } from './lie.ts';
import type { CopeStep, MiterCut, MiterStep, Take } from './model.ts';

/**
 * The angles of the saw, the steepest first, each once. At an angle first the ends that have another miter still to come:
 * they are cut to the corner of the blank. Then, stop by stop from long to short, the ends that make the length: lefts,
 * rights, then the second ends of those mitered at both, then what is cut straight from its board, both ends. Every mitered end is cut once.
 * @param pieces that are cut square by then
 * @param once what is cut straight from its board
 */
export function mitersOf(pieces: readonly Piece[], once: readonly Take[] = []): Omit<MiterStep, 'number'>[] {
    const ends = [
        ...pieces.filter(piece => piece.ends.some(isTurned)).sort(comparePieces).flatMap(endsToCut),
        ...once.flatMap(take => take.pieces.map(laid => ({ ...endsToCut(laid.piece).at(-1)!, from: { ...take, pieces: [laid] } }))),
    ];
    return [...grouped(ends, settingOf).values()].sort(([a], [b]) => compareEach(angleAt(a!), angleAt(b!)))
        .map(own => ({ do: 'miter', degrees: own[0]!.degrees, ...own[0]!.flat && { flat: own[0]!.flat }, cuts: gather(own) }));
}

/** The steepest first; of one angle what is cut at a bevel too comes last. */
function angleAt({ degrees, flat }: EndToCut): number[] {
    return [-degrees, Number(flat !== undefined)];
}

/** A crown is cut flat at a miter and a bevel of its own; all else of one angle is cut at one setting. */
function settingOf({ degrees, flat }: EndToCut): string {
    return JSON.stringify([degrees, flat && [flat.miter, flat.bevel].map(angle => angle.toFixed(1))]);
}

/** Ends to be coped, once they are cut at their angle. */
export function copesOf(pieces: readonly Piece[]): Omit<CopeStep, 'number'>[] {
    const coped = pieces.filter(piece => piece.ends.some(isCoped)).sort(comparePieces);
    return coped.length === 0 ? [] : [{ do: 'cope', ends: coped.reduce((sum, { ends }) => sum + ends.filter(isCoped).length, 0), pieces: coped }];
}

function isCoped({ cut }: EndCut): boolean {
    return cut === 'coped';
}

interface EndToCut { readonly piece: Piece; readonly degrees: number; readonly end: 'left' | 'right'; readonly long: MiterCut['long']; readonly flat?: FlatCut; readonly isLast: boolean; readonly from?: Take }

/** The piece's mitered ends in the order they are cut: the steeper first, of two alike the left one. */
function endsToCut(piece: Piece): EndToCut[] {
    const ends = endsFromTheLeft(piece).flatMap((end, i) => (isTurned(end) ? [{ degrees: sawDegrees(end), end: i === 0 ? 'left' as const : 'right' as const, long: longAt(end), ...end.flat && { flat: end.flat } }] : []))
        .sort((a, b) => b.degrees - a.degrees);
    // What fits either way round is laid the one way, so that it shares its setting.
    if (handAtSaw(piece) === 'either') return ends.map(end => ({ ...end, piece, end: 'right', isLast: true }));
    return ends.map((end, i) => ({ piece, ...end, isLast: i === ends.length - 1 }));
}

function longAt(end: EndCut): MiterCut['long'] {
    return degreesOf(end) > 0 ? 'back' : 'face';
}

function gather(ends: readonly EndToCut[]): MiterCut[] {
    const cuts = new Map<string, MiterCut & { pieces: Piece[]; takes?: Take[] }>();
    for (const { piece, end, long, isLast, from } of ends) {
        const hand = handAtSaw(piece)!;
        const stop = isLast ? piece.cutOverall : undefined;
        const flat = liesFlat(piece), key = JSON.stringify([stop, end, hand, long, flat, from !== undefined]);
        const cut = atKey(cuts, key, () => ({ ...stop !== undefined && { stop }, end, long, flat, hand, pieces: [], ...from && { takes: [] } }));
        cut.pieces.push(piece);
        if (from) cut.takes = withTake(cut.takes ?? [], from);
    }
    return [...cuts.values()].sort((a, b) => compareEach(placeOf(a), placeOf(b)));
}

/** Takes of one strip are one. */
function withTake(takes: readonly Take[], { board, strip, pieces }: Take): Take[] {
    const last = takes.at(-1);
    return last?.strip === strip ? [...takes.slice(0, -1), { ...last, pieces: [...last.pieces, ...pieces] }] : [...takes, { board, strip, pieces }];
}

/** Ends without a stop, then the long stops first; at one stop by hand, and what is cut alike but for how it lies together. */
function placeOf({ stop = Number.MAX_SAFE_INTEGER, hand, end, flat, long, takes }: MiterCut): number[] {
    return [-stop, Number(takes !== undefined), HANDS.indexOf(hand), ENDS.indexOf(end), Number(flat), LONG.indexOf(long)];
}
const HANDS: readonly MiterCut['hand'][] = ['left', 'right', 'either', 'both ends'];
const ENDS: readonly MiterCut['end'][] = ['left', 'right'];
const LONG: readonly MiterCut['long'][] = ['back', 'face'];
