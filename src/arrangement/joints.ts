import { placeIn, touch, type Polygon } from '../plane/polygon.ts';
import { distance, type Point } from '../plane/point.ts';
import type { WallCarrier } from './carriers.ts';
import type { Joint, Part, Piece } from './model.ts';
import { outlineOf } from './piece.ts';
import type { SideRun } from './sides.ts';
import { grouped } from '../plain/groups.ts';

/** Sides with the runs they were made from, and trims loop by loop: what tells whose ends meet. */
interface Made {
    readonly pieces: readonly Piece[];
    readonly sides: ReadonlyMap<SideRun, Piece>;
    readonly trims: readonly (readonly Piece[])[];
    readonly walls: readonly WallCarrier[];
}

/** The joints that show: corners of sides and of trims, bottoms and timbers that butt against one that runs through, splices, corners of the band. */
export function jointsOf({ pieces, sides, trims, walls }: Made): Joint[] {
    const index = new Map(pieces.map((piece, i) => [piece, i]));
    const joint = (kind: Joint['kind'], a: Piece | undefined, b: Piece | undefined): Joint[] =>
        a && b && a !== b ? [{ kind, pieces: [index.get(a)!, index.get(b)!], meets: [a.of, b.of] }] : [];
    const byCarrier = grouped(pieces, piece => placeKey(piece.part, piece.of));
    const all = (part: Part, of: string): readonly Piece[] => byCarrier.get(placeKey(part, of)) ?? [];
    return [
        ...sideCorners(sides).flatMap(([a, b]) => joint('corner', a, b)),
        ...pieces.flatMap(piece => buttsOf(piece, all).flatMap(other => joint('butt', piece, other))),
        ...pieces.flatMap(piece => (isSpliced(piece) && piece.part !== 'trim' ? joint('splice', piece, all(piece.part, piece.of).find(next => follows(piece, next))) : [])),
        ...walls.flatMap((wall, i) => joint('band-corner', all('band', wall.name).at(-1), all('band', walls[(i + 1) % walls.length]!.name)[0])),
        ...trims.flatMap(loop => loop.flatMap((piece, i) => joint(isSpliced(piece) ? 'splice' : 'trim-corner', piece, loop[(i + 1) % loop.length]))),
    ];
}

/** At its second end. */
function isSpliced({ ends }: Piece): boolean {
    return ends[1].cut === 'splice';
}

/** Of what stands on the left flank of a line, which is walked against it, the one that is counted before. */
function follows({ nth, flank }: Piece, next: Piece): boolean {
    return next.flank === flank && next.nth === (flank === 'left' ? nth - 1 : nth + 1);
}

function placeKey(part: Part, of: string): string {
    return `${part} ${of}`;
}

/** In every corner of a coffer a side that ends meets the one that starts there. */
function sideCorners(sides: ReadonlyMap<SideRun, Piece>): [Piece, Piece | undefined][] {
    const starting = new Map<string, Piece>();
    for (const [{ flank, start }, piece] of sides) if (start.cut !== 'dies' && start.cut !== 'splice') starting.set(`${(start.joins ?? start.other).id} ${flank.id}`, piece);
    return [...sides].flatMap(([{ flank, end }, piece]) => end.cut === 'dies' || end.cut === 'splice' ? [] : [[piece, starting.get(`${flank.id} ${(end.joins ?? end.other).id}`)]]);
}

/** What a bottom's or a timber's ends butt against: the piece of the other line that they touch. */
function buttsOf(piece: Piece, all: (part: Part, of: string) => readonly Piece[]): Piece[] {
    if (piece.part !== 'bottom' && piece.part !== 'beam') return [];
    return piece.ends.flatMap(({ cut, meets }, i) => {
        if (cut !== 'between') return [];
        const others = all(piece.part, meets);
        const end = endOf(piece, i);
        const met = others.find(other => touches(outlineOf(other), end));
        return met ? [met] : [];
    });
}

/** The middle of one end, and a point a thousandth of an inch in front of it, that lies in what it touches. */
function endOf(piece: Piece, which: number): readonly [Point, Point] {
    const [a, b, c, d] = outlineOf(piece) as [Point, Point, Point, Point];
    const middle = (p: Point, q: Point): Point => ({ x: Math.round((p.x + q.x) / 2), y: Math.round((p.y + q.y) / 2) });
    const [start, end] = [middle(a, d), middle(b, c)];
    const [at, from] = which === 0 ? [start, end] : [end, start];
    const length = distance(at, from) || 1;
    return [at, { x: Math.round(at.x + (at.x - from.x) * BEYOND / length), y: Math.round(at.y + (at.y - from.y) * BEYOND / length) }];
}
/** Ticks. A play is wider than this; so from the end of a bottom the other begins within it only where they touch but for rounding. */
const BEYOND = 16;

/**
 * Where an end leans, rounding may put its middle a tick into what it touches: then the stretch in front of it lies inside of that, and
 * crosses none of its edges.
 */
function touches(outline: Polygon, [at, beyond]: readonly [Point, Point]): boolean {
    return placeIn(outline, beyond) === 'inside' || outline.some((corner, i) => touch(corner, outline[(i + 1) % outline.length]!, at, beyond));
}
