import { crossing, directionOf, offset, squareThrough, type Line } from '../plane/line.ts';
import { angleOnTheRight } from '../plane/angle.ts';
import { reach, type Point } from '../plane/point.ts';
import { isBeam, relationInCorner, type Flank, type WallCarrier } from './carriers.ts';
import { isOutside } from './corners.ts';
import { endOfDying } from './line-strips.ts';
import type { Cut, Part, Piece, Term } from './model.ts';
import { heightsOf } from './offsets.ts';
import { pieceOf, type Stretch } from './piece.ts';
import type { Spot, Wall } from './plan.ts';
import { looking } from './sides.ts';
import { pointOf, type Unit } from './unit.ts';
import { closingAt, turnOf } from './wall-ends.ts';

/**
 * What runs along a wall, from the wall out: the band, or a half beam's bottom, blocking and wall cleat. Corners, common practice, no
 * source: within 10 degrees of square the wall that lies nearer east-west runs to the other wall, and the other ends at its edge;
 * round an outside corner of half beams it runs on to the other's edge, and the other ends at its wall. All other corners, and
 * bands round every outside corner, are mitered. Half beams die into the face of a band; both run to a bare wall. Of half beams of two depths the deeper
 * runs to the wall and the shallower dies into it, as lines do, its blocking clear of that. `planned`: the plan's, with their splices.
 */
export function stripsOfWalls(walls: readonly WallCarrier[], planned: readonly Wall[], unit: Unit): Piece[] {
    return walls.flatMap((wall, i) => partsOf(wall, unit).flatMap(part => {
        return pieces(part, walls.at(i - 1)!, wall, walls[(i + 1) % walls.length]!, splicesOf(part, planned[i]!), unit);
    }));
}

function splicesOf({ part }: WallPart, { splices = [], cleatSplices = splices }: Wall): readonly Spot[] {
    return part === 'wall-cleat' ? cleatSplices : splices;
}

/** Within this of 90 or 270 degrees a corner is taken for square. */
const NEARLY_SQUARE = 10;

interface WallPart {
    readonly part: Part;
    readonly width: number;
    readonly edge: (wall: WallCarrier) => Line;
    readonly top: number;
    readonly foot: number;
    readonly scribe?: number;
    /** What it stays off a deeper half beam, and then off a band or a bare wall at its other end as well. */
    readonly clearance?: number;
}

function partsOf({ perimeter }: WallCarrier, unit: Unit): WallPart[] {
    switch (perimeter.kind) {
        case 'bare': return [];
        case 'band': return [{ part: 'band', width: perimeter.thickness, edge: faceOf, top: perimeter.top, foot: perimeter.foot }];
        case 'half-timber': {
            const { width, depth, scribe } = perimeter;
            return [{ part: 'beam', width, edge: faceOf, top: 0, foot: depth, ...scribe !== undefined && { scribe } }];
        }
        case 'half-beam': {
            const { bottomTop, bottomFoot, blockingFoot } = heightsOf(perimeter);
            const { blocking, bottom, wallCleat, inside, scribe } = perimeter;
            const parts: (WallPart | undefined)[] = [
                blocking && { part: 'blocking', width: inside, edge: wall => wall.right.blocking, top: 0, foot: blockingFoot, clearance: (blocking.clearance ?? 0) * unit.perTick },
                wallCleat && { part: 'wall-cleat', width: wallCleat.width, edge: wallCleatEdge(unit), top: bottomTop - wallCleat.height, foot: bottomTop },
                bottom && { part: 'bottom', width: 0, edge: wall => wall.right.bottom, top: bottomTop, foot: bottomFoot, ...scribe !== undefined && { scribe } },
            ];
            return parts.filter(part => part !== undefined);
        }
    }
}

function faceOf({ right }: WallCarrier): Line {
    return right.face;
}
function wallCleatEdge(unit: Unit): (wall: WallCarrier) => Line {
    return ({ right, perimeter }) => perimeter.kind === 'half-beam' && perimeter.wallCleat ? offset(right.base, perimeter.wallCleat.width * unit.perTick) : right.face;
}

interface CornerCut { readonly atWall: Point; readonly atEdge: Point; readonly cut: Cut; readonly meets: string }

function pieces(part: WallPart, before: WallCarrier, wall: WallCarrier, after: WallCarrier, spots: readonly Spot[], unit: Unit): Piece[] {
    const clear = diesInto(before, before, wall) || diesInto(after, wall, after) ? part.clearance ?? 0 : 0;
    const start = cornerCut(part, before, wall, wall, clear), end = cornerCut(part, wall, after, wall, clear);
    if (!start || !end) return [];
    const { base } = wall.right, edge = part.edge(wall);
    const splices = spots.map((spot): CornerCut => {
        const at = squareThrough(base, pointOf(spot, unit));
        return { atWall: crossing(base, at)!, atEdge: crossing(edge, at)!, cut: 'splice', meets: wall.name };
    });
    const place = ({ atWall }: CornerCut): number => reach(start.atWall, atWall, directionOf(base));
    const stops = [start, ...splices.filter(splice => place(splice) > 0 && place(splice) < place(end)).sort((a, b) => place(a) - place(b)), end];
    return stops.slice(1).flatMap((stop, i) => piece(part, wall, i + 1, stops[i]!, stop, unit) ?? []);
}

function piece(part: WallPart, wall: WallCarrier, nth: number, start: CornerCut, end: CornerCut, unit: Unit): Piece | undefined {
    const { base, offsets } = wall.right, way = directionOf(base);
    const atWall: Stretch = { from: start.atWall, to: end.atWall }, atEdge: Stretch = { from: start.atEdge, to: end.atEdge };
    const why: Term[] = [
        { what: 'clear', of: wall.name, ticks: reach(atWall.from, atWall.to, way) },
        { what: 'end', of: start.meets, ticks: reach(atEdge.from, atWall.from, way) },
        { what: 'end', of: end.meets, ticks: reach(atWall.to, atEdge.to, way) },
    ];
    return pieceOf({
        part: part.part, of: wall.name, on: looking(wall.right), nth, way: base, names: ['wall', 'room'], edges: [atWall, atEdge],
        cuts: [start.cut, end.cut], meets: [start.meets, end.meets], width: part.part === 'bottom' ? offsets.bottom : part.width,
        top: part.top, foot: part.foot, why, ...part.scribe !== undefined && { scribe: part.scribe },
    }, unit);
}

function isDeeper(other: WallCarrier, own: WallCarrier): boolean {
    return isBeam(own.perimeter) && isBeam(other.perimeter) && relationInCorner(own, other) === 'dies';
}

/** Whether the other of two walls dies into this, a deeper half beam, in their corner or by its return. */
function diesInto(deeper: WallCarrier, before: WallCarrier, after: WallCarrier): boolean {
    const own = deeper === before ? after : before;
    return !closingAt(before, after, own).closed && turnOf(before, after) !== 'outside' && isDeeper(deeper, own);
}

/** The end of `own` in the corner where the wall `before` ends and `after` starts. `clear`: what it stays off what it dies into. */
function cornerCut(part: WallPart, before: WallCarrier, after: WallCarrier, own: WallCarrier, clear: number): CornerCut | undefined {
    const other = own === before ? after : before, meets = other.name;
    const along = (line: Line, cut: Cut): CornerCut | undefined => {
        const atWall = crossing(own.right.base, line), atEdge = crossing(part.edge(own), line);
        return atWall && atEdge && { atWall, atEdge, cut, meets };
    };
    const outside = isOutside(before.right, after.right), square = nearlySquare(before, after);
    const { closed, beside } = closingAt(before, after, own);
    if (closed) return along(edgeBehind(closed, part.part), 'dies');
    if (beside) return along(offset(endOfDying(own.perimeter, beside, part.part), clear), 'dies');
    const mitered = (): CornerCut | undefined => {
        const atWall = crossing(own.right.base, other.right.base), atEdge = crossing(part.edge(own), part.edge(other));
        return atWall && atEdge ? { atWall, atEdge, cut: outside ? 'outside-miter' : 'miter', meets } : along(squareThrough(own.right.base, after.start), 'square');
    };
    const kinds = [own.perimeter.kind, other.perimeter.kind], beams = [isBeam(own.perimeter), isBeam(other.perimeter)];
    if (beams[0] && kinds[1] === 'band') return along(offset(other.right.face, clear), 'dies');
    if (beams[0] && beams[1] && relationInCorner(own, other) !== 'flush') {
        return along(isDeeper(other, own) ? offset(endOfDying(own.perimeter, other.right, part.part), clear) : other.right.base, 'dies');
    }
    if (outside && !beams[0] && !beams[1]) return mitered();
    if (kinds[0] !== kinds[1]) return along(offset(other.right.base, clear), 'dies');
    if (!square || outside && kinds[0] === 'band') return mitered();
    const runs = runsPast(own, other);
    if (outside) return runs ? along(part.edge(other), 'runs-through') : along(other.right.base, 'between');
    return runs ? along(other.right.base, 'dies') : along(part.edge(other), 'between');
}

/** What lies in a half beam ends at its return as it lies beside its side. */
function edgeBehind(closed: Flank, part: Part): Line {
    return part === 'bottom' ? closed.bottom : part === 'blocking' ? closed.blocking : closed.back;
}

function nearlySquare(before: WallCarrier, after: WallCarrier): boolean {
    const angle = angleOnTheRight(before.start, after.start, after.end);
    return Math.abs(angle - 90) <= NEARLY_SQUARE || Math.abs(angle - 270) <= NEARLY_SQUARE;
}

/** The wall that lies nearer east-west; of two that lie alike, the one that is named first. */
function runsPast(own: WallCarrier, other: WallCarrier): boolean {
    const lean = ({ right: { base } }: WallCarrier): number => Math.abs(base.a) / Math.abs(base.b);
    return lean(own) === lean(other) ? own.index < other.index : lean(own) < lean(other);
}
