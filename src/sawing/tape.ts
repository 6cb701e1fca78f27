import type { Piece } from '../takeoff/model.ts';
import { degreesOf, endsFromTheLeft, isTurned } from '../takeoff/ends.ts';
import { miterCount } from './lie.ts';

/** Where the tape is hooked to measure a finished piece, and between which points it then reads. */
interface Taping {
    readonly hook: 'either end' | 'square end' | 'long point';
    /** The end that is hooked, on the piece as it lies; null where either does. */
    readonly end: 'left' | 'right' | null;
    readonly along: 'face or back' | 'back' | 'face';
    /** A rabbet takes the long point away at its edge of the back, or of the face: there the tape finds nothing to hook on. */
    readonly edge: 'any' | 'upper' | 'lower';
}

export function tapingOf(piece: Piece): Taping {
    const rabbet = piece.work.find(each => each.kind === 'rabbet');
    if (miterCount(piece) === 0) return { hook: 'either end', end: null, along: 'face or back', edge: 'any' };
    const ends = endsFromTheLeft(piece), along = ends.some(end => degreesOf(end) > 0) ? 'back' : 'face';
    const isAway = along === 'face' ? rabbet?.face === 'front' : rabbet?.face === 'back';
    const there = { along, edge: !isAway ? 'any' : rabbet?.edge === 'lower' ? 'upper' : 'lower' } as const;
    if (miterCount(piece) === 2) return { hook: 'long point', end: null, ...there };
    return { hook: 'square end', end: piece.hand === null ? null : isTurned(ends[0]) ? 'right' : 'left', ...there };
}

/** In words for the list: `hook the right end, square, along the upper back edge to the long point`. */
export function tapingWords({ hook, end, along, edge }: Taping): string {
    const way = edge === 'any' ? `the ${along}` : `the ${edge} ${along} edge`;
    switch (hook) {
        case 'either end': return 'hook either end';
        case 'square end': return `hook the square end${end === null ? '' : `, its ${end}`}; along ${way} to the long point`;
        case 'long point': return `hook one long point; along ${way} to the other`;
    }
}
