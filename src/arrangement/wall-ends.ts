import { offset, squareThrough, turn, turnedRound, type Line } from '../plane/line.ts';
import { isBeam, relationInCorner, type Flank, type WallCarrier } from './carriers.ts';

/** `outside`: the corner juts into the room; `straight`: there is none, the two walls lie in line. */
export type Turn = 'inside' | 'straight' | 'outside';

/** By which way the second wall runs as seen from the first: to the right, above 0, or to the left. */
export function turnBy(way: number): Turn {
    return way > 0 ? 'inside' : way < 0 ? 'outside' : 'straight';
}

export function turnOf({ right: before }: WallCarrier, { right: after }: WallCarrier): Turn {
    return turnBy(turn(before.base, after.base));
}

/** In the corner where one wall ends and the next starts: what closes `own` there by itself, and what closes the other, at which `own` ends. */
export function closingAt(
    before: WallCarrier, after: WallCarrier, own: WallCarrier,
): { readonly closed: Flank | undefined; readonly beside: Flank | undefined } {
    const { closes: { end } } = before, { closes: { start } } = after;
    return own === before ? { closed: end, beside: start } : { closed: start, beside: end };
}

/**
 * Where what runs along a wall ends though the room goes on: beside something else along a wall in line with its own, or round an outside corner. A half beam
 * is closed there by a return: a side across its end, whose face stands square through the place where the walls join, or in line with the other wall, and
 * which is mitered with the side along the wall and runs to the wall itself. A band or a timber ends there square. Common practice, no source.
 * @param id what no flank has yet, nor any number above it
 */
export function closeEnds(walls: readonly WallCarrier[], id: number): void {
    walls.forEach((wall, i) => {
        const before = walls.at(i - 1)!, after = walls[(i + 1) % walls.length]!, ways = [turnOf(before, wall), turnOf(wall, after)] as const;
        if (endsBeside(wall, before, ways[0])) wall.closes.start = endFlank(wall, before, 'start', ways[0], id++);
        if (endsBeside(wall, after, ways[1])) wall.closes.end = endFlank(wall, after, 'end', ways[1], id++);
    });
}

/**
 * Whether `own` ends there by itself. In line it goes on where the other is as wide and as deep, and dies into the other's return where that hides all of its
 * end; round a corner it turns with its like.
 */
function endsBeside(own: WallCarrier, other: WallCarrier, way: Turn): boolean {
    const [a, b] = [own.perimeter, other.perimeter];
    if (way === 'inside' || a.kind === 'bare') return false;
    if (way === 'outside') return (isBeam(a) || isBeam(b)) && relationInCorner(own, other) !== 'flush';
    return !goesOn(own, other) && !isHidden(own, other);
}

/** The same on both walls: it runs on across where they join. */
function goesOn({ perimeter: a, right: own }: WallCarrier, { perimeter: b, right: other }: WallCarrier): boolean {
    return a.kind === b.kind && own.offsets.face === other.offsets.face && (!isBeam(a) || !isBeam(b) || a.depth === b.depth);
}

/** Nothing of its end shows beside the other's. A band's does not beside a beam that stands out farther. */
function isHidden({ perimeter: a, right: own }: WallCarrier, { perimeter: b, right: other }: WallCarrier): boolean {
    if (!isBeam(b) || other.offsets.face < own.offsets.face) return a.kind === 'band' && b.kind === 'band' && own.offsets.face < other.offsets.face;
    return !isBeam(a) || a.depth <= b.depth;
}

/**
 * The flank that closes it: walked to the wall at its end, and away from it at its start, so that the coffer lies on its right. Its offsets are those of the
 * wall's, from a base that lies as far behind.
 */
function endFlank(own: WallCarrier, other: WallCarrier, at: 'start' | 'end', way: Turn, id: number): Flank {
    const { right } = own, joint = at === 'end' ? other.start : own.start;
    const face = way === 'outside' ? other.right.base : at === 'end' ? turnedRound(squareThrough(right.base, joint)) : squareThrough(right.base, joint);
    const isClosed = own.perimeter.kind === 'half-beam', ownFace = right.offsets.face;
    const offsets = isClosed ? right.offsets : { face: ownFace, back: ownFace, bottom: ownFace, blocking: ownFace };
    const parallel = (of: Line): Line => offset(face, distanceBetween(right.face, of, right.base));
    const [back, bottom, blocking] = isClosed ? [parallel(right.back), parallel(right.bottom), parallel(right.blocking)] : [face, face, face];
    return { id, of: own, side: 'right', closes: at, base: offset(face, distanceBetween(right.face, right.base, right.base)), face, back, bottom, blocking, offsets };
}

/** How far one parallel lies to the right of another, in units; to the left where negative. */
function distanceBetween({ a, b, c }: Line, to: Line, like: Line): number {
    const over = to.c - c;
    return a === 0 || b === 0 || like.a === 0 || like.b === 0 ? over : Math.round(over / Math.hypot(a, b));
}
