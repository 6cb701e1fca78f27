import type { Stock } from '../../job/model.ts';
import { cutAlike, hasNamedEnds, isHanded } from '../../takeoff/cut-alike.ts';
import { compassOfEnd, endsFromTheLeft, endWords, endWordsOf } from '../../takeoff/ends.ts';
import { PARTS, type Part, type Piece } from '../../takeoff/model.ts';
import { compareNames, comparePieces } from '../../takeoff/piece-order.ts';
import { grouped } from '../../plain/groups.ts';

/** Pieces that are cut alike, at one setting of stop, fence and saw. */
export interface Batch { readonly sample: Piece; readonly pieces: readonly Piece[] }
interface PartBatches { readonly part: Part; readonly batches: readonly Batch[] }
export interface StockBatches { readonly stock: Stock; readonly pieces: number; readonly parts: readonly PartBatches[] }

/** For the saw: by stock, then part, then the longest first; left and right hands apart. */
export function batchesOf(pieces: readonly Piece[]): StockBatches[] {
    const stocks = [...grouped(pieces, p => p.stock.key).values()];
    return stocks.map(own => ({
        stock: own[0]!.stock,
        pieces: own.length,
        parts: PARTS.map(part => ({ part, batches: batches(own.filter(p => p.part === part)) })).filter(p => p.batches.length > 0),
    })).sort((a, b) => compareNames(a.stock.name, b.stock.name) || compareNames(a.stock.key, b.stock.key));
}

function batches(pieces: readonly Piece[]): Batch[] {
    return [...grouped(pieces, cutAlike).values()]
        .map(alike => alike.sort(comparePieces))
        .map(alike => ({ sample: alike[0]!, pieces: alike }))
        .sort((a, b) => b.sample.cutBack - a.sample.cutBack || b.sample.cutFace - a.sample.cutFace
            || compareNames(cutAlike(a.sample), cutAlike(b.sample)));
}

export { endWordsOf as endText } from '../../takeoff/ends.ts';

/**
 * The two ends of a piece; of what lies and leans by where they point, else from the left where they lean differently, so that turning it
 * round makes another piece.
 */
export function endsText(piece: Piece): string {
    if (hasNamedEnds(piece)) {
        const [one, other] = piece.ends.map(end => endWordsOf(piece, end));
        return one === other ? `${one!}, both ends` : `${compassOfEnd(piece, 'first')} end ${one!}; ${compassOfEnd(piece, 'last')} end ${other!}`;
    }
    if (isHanded(piece)) { const [left, right] = endsFromTheLeft(piece); return `${endWords(left)} left, ${endWords(right)} right`; }
    const [a, b] = piece.ends, [first, second] = [endWords(a), endWords(b)].sort();
    return first === second ? `${first} both ends` : `${first} one end, ${second} the other`;
}
