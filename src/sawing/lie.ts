import type { EndCut, Piece } from '../takeoff/model.ts';

/**
 * The piece's ends, left then right, seen with the face towards you and the groove edge down. Laid on the saw with the back
 * up and the groove edge against the fence it keeps left and right: it is turned over about its length.
 */
export function endsAsItLies(piece: Piece): readonly [EndCut, EndCut] {
    const [first, last] = piece.ends;
    return leftIsFirst(piece) === !grooveIsUp(piece) ? [first, last] : [last, first];
}

/** West or north end on the left of somebody who looks at its face: a beam's side faces away from its line, band and trim face the room. */
function leftIsFirst({ part, on }: Piece): boolean {
    if (on === null) return true;
    const looking = part === 'band' || part === 'trim' ? on : OPPOSITE[on];
    return looking === 'north' || looking === 'east';
}
const OPPOSITE = { north: 'south', south: 'north', east: 'west', west: 'east' } as const;

function grooveIsUp({ work }: Piece): boolean {
    return work.some(each => each.kind === 'rabbet' && each.edge === 'upper');
}

export function isMiter(end: EndCut): end is EndCut & { readonly cut: 'miter' } {
    return end.cut === 'miter';
}
export function miterCount(piece: Piece): number {
    return piece.ends.filter(isMiter).length;
}

/** What tells the piece's two ends apart at the saw: the hand the cut list gives, `both ends`, or `either` where it fits either way round. */
export function handAtSaw(piece: Piece): 'left' | 'right' | 'both ends' | 'either' | null {
    switch (miterCount(piece)) {
        case 0: return null;
        case 1: return piece.hand ?? 'either';
        default: return 'both ends';
    }
}
