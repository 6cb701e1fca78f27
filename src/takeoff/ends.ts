import { compassOf } from '../arrangement/compass.ts';
import { reversed } from '../plane/point.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Compass, EndCut, Piece } from './model.ts';

/** What the saw is set to, from square; less than nothing where the face is the longer at this end, 0 of a square one. */
export function degreesOf({ degrees = 0 }: EndCut): number {
    return degrees;
}

/** Whether the saw is turned or tilted for it. */
export function isSlanted(end: EndCut): boolean {
    return degreesOf(end) !== 0;
}

/** From edge to edge, the way its ends lean: what lies in a beam is cut at an angle across its width, all else through its thickness. */
export function acrossOf({ part, lies, width, thickness, stands }: Leaning): Ticks {
    return liesFlat({ part, lies }) ? width : stands?.out ?? thickness;
}
type Leaning = Pick<Piece, 'part' | 'lies' | 'width' | 'thickness' | 'stands'>;

/** Bottoms, blocking, panels and what is flat under the beam lie, and are cut as they lie; what stands on edge is mitered through its thickness. */
export function liesFlat({ part, lies }: Pick<Piece, 'part' | 'lies'>): boolean {
    return part === 'bottom' || part === 'blocking' || part === 'panel' || lies === true;
}

/**
 * Its lengths as a list tells them. Ends that are told as square make one length: where corners in whole ticks leave its two edges a mark of the tape
 * apart, nobody cuts that.
 */
export function toldLengths({ ends, cutBack: back, cutFace: face, cutOverall: overall }: Pick<Piece, 'ends' | 'cutBack' | 'cutFace' | 'cutOverall'>): Told {
    return ends.some(isTurned) ? { back, face, overall } : { back: overall, face: overall, overall };
}
interface Told { readonly back: Ticks; readonly face: Ticks; readonly overall: Ticks }

/** What its length over all is not: its face, its shorter edge where it lies, its back where that is shorter than what it takes of a board. */
export function edgesText(piece: Pick<Piece, 'part' | 'lies' | 'ends' | 'cutFace' | 'cutBack' | 'cutOverall'>, print: (ticks: Ticks) => string): string {
    const { face: cutFace, back: cutBack, overall } = toldLengths(piece);
    if (cutFace === overall && cutBack === overall) return '';
    const lies = liesFlat(piece), edge = (ticks: Ticks, name: string): string => (ticks === overall ? '' : `${name} ${print(ticks)}`);
    if (lies && cutFace === cutBack) return edge(cutFace, 'both edges');
    return [edge(cutFace, lies ? 'edge' : 'face'), edge(cutBack, lies ? 'edge' : 'back')].filter(Boolean).join(', ');
}

/** How far the face ends short of the back at this end; negative: beyond it. */
export function leanOf(end: EndCut, piece: Leaning): number {
    return acrossOf(piece) * Math.tan(degreesOf(end) * Math.PI / 180);
}

/**
 * Its ends, left then right: with the face towards you and the groove edge down; of what lies, seen from above with the edge to the west or north
 * away from you. Laid on the saw with the back up, or that edge at the fence, it keeps left and right.
 */
export function endsFromTheLeft(piece: Pick<Piece, 'ends' | 'corners' | 'work'>): readonly [EndCut, EndCut] {
    const [first, last] = piece.ends;
    return isFirstLeft(piece) === !hasUpperGroove(piece) ? [first, last] : [last, first];
}

/** The end with a miter where just one has one, seen the same way. Nobody looks at the face of what lies, but of a molding, which has a profile. */
export function miterAt(piece: Pick<Piece, 'part' | 'lies' | 'ends' | 'corners' | 'work'>): Piece['hand'] {
    const [left, right] = endsFromTheLeft(piece);
    if (liesFlat(piece) && piece.part !== 'molding' || isMiter(left) === isMiter(right)) return null;
    return isMiter(left) ? 'left' : 'right';
}

const isMiter = ({ cut }: EndCut): boolean => cut === 'miter';

/** Somebody who looks at its face has its first end on the left where the face lies to the right of the way from the first end to the last. */
function isFirstLeft({ corners: [back, backEnd, , face] }: Pick<Piece, 'corners'>): boolean {
    return (backEnd.x - back.x) * (face.y - back.y) - (backEnd.y - back.y) * (face.x - back.x) >= 0;
}

/** Which way its first or its last end points. */
export function compassOfEnd({ corners: [back, backEnd] }: Pick<Piece, 'corners'>, end: 'first' | 'last'): Compass {
    const way = { x: backEnd.x - back.x, y: backEnd.y - back.y };
    return compassOf(end === 'first' ? reversed(way) : way);
}

/** A hand is told with the groove edge down: a piece whose rabbet is on its upper edge is looked at upside down. */
function hasUpperGroove({ work }: Pick<Piece, 'work'>): boolean {
    return work.some(each => each.kind === 'rabbet' && each.edge === 'upper');
}

/** Which edge of what lies is the longer at an end, as one of eight winds: it has no face and no back to tell by. */
export function longerEdgeOf(piece: Pick<Piece, 'part' | 'lies'>, end: EndCut): Compass | undefined {
    return hasEdgesAlone(piece) && isTurned(end) ? end.longer : undefined;
}

/** Bottoms, blocking and panels, not a molding that lies: that has a profile to look at. */
function hasEdgesAlone(piece: Pick<Piece, 'part' | 'lies'>): boolean {
    return liesFlat(piece) && piece.part !== 'molding';
}

/** An end of a piece as lists tell it; of what lies by the edge that is the longer: `angled 0.1, longer at the south edge`. */
export function endWordsOf(piece: Pick<Piece, 'part' | 'lies'>, end: EndCut): string {
    return endWords(end, longerEdgeOf(piece, end));
}

/** As lists tell it: `square`, `miter 45`, `scarf 45`, `angled 0.1, longer at the face`, `miter 45, then coped`. */
export function endWords(end: EndCut, longerEdge?: Compass): string {
    const off = degreesOf(end);
    if (!isTurned(end)) return end.cut === 'coped' ? 'coped' : 'square';
    const flat = end.flat ? ` (flat: miter ${roundedDegrees(end.flat.miter)}, bevel ${roundedDegrees(end.flat.bevel)})` : '';
    const longer = longerEdge ? `, longer at the ${longerEdge} edge` : off < 0 ? ', longer at the face' : '';
    const how = `${longer}${end.cut === 'coped' ? ', then coped' : ''}`;
    return `${end.cut !== 'angled' ? 'miter' : end.how === 'splice' ? 'scarf' : 'angled'} ${roundedDegrees(off)}${flat}${how}`;
}

/**
 * To a tenth of a degree, without its sign: finer no saw is set, and half of that off opens a miter through 3/4" by less than 0.001", a cut across
 * 5 1/2" by 0.005". Common practice, no source.
 */
export function sawDegrees(end: EndCut): number {
    return Math.round(Math.abs(degreesOf(end)) * 10) / 10;
}

/** Whether the saw is set to anything but square for it. */
export function isTurned(end: EndCut): boolean {
    return sawDegrees(end) !== 0;
}

/** For lists that are read by programs: to a ten-thousandth, since corners in whole ticks leave more decimals that mean nothing. */
export function signedDegrees(end: EndCut): number {
    return Math.round(degreesOf(end) * 1e4) / 1e4 + 0;
}

/** To a hundredth of a degree, without its sign: finer than a saw is set. */
export function roundedDegrees(degrees: number): number {
    return Math.round(Math.abs(degrees) * 100) / 100;
}
