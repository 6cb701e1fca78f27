import { degreesOf } from '../plane/angle.ts';
import { directionOf, type Line } from '../plane/line.ts';
import { reach, type Point } from '../plane/point.ts';
import type { Polygon } from '../plane/polygon.ts';
import type { Compass, Cut, Edge, EdgeName, End, Part, Piece, Term } from './model.ts';
import type { Unit } from './unit.ts';

/** One long edge of a piece, in units. */
export interface Stretch { readonly from: Point; readonly to: Point }

/** A piece as its part makes it; lengths, angles and hand follow. */
interface Blank {
    readonly part: Part;
    readonly of: string;
    readonly on?: Compass | null;
    readonly flank?: Piece['flank'];
    readonly closes?: Piece['closes'];
    /** Of what looks into coffers: their numbers. */
    readonly coffers?: readonly number[];
    readonly nth: number;
    /** The way its frame runs. */
    readonly way: Line;
    readonly names: readonly [EdgeName, EdgeName];
    readonly edges: readonly [Stretch, Stretch];
    readonly cuts: readonly [Cut, Cut];
    readonly meets: readonly [string, string];
    /** Which flanks of these. */
    readonly at?: readonly [End['at'], End['at']];
    /** Between the two edges, in ticks. */
    readonly width: number;
    readonly top: number; readonly foot: number;
    readonly scribe?: number;
    /** Terms of the second edge, in units. */
    readonly why: readonly Term[];
    /** Of a crown: what the saw is set to at an end. */
    readonly saw?: readonly [End['saw'], End['saw']];
}

/** A quarter of a tick: what is shorter or leans less is rounding. */
const ROUNDING = 1 / 4;

/** The finished piece; undefined where it has no length. */
export function pieceOf(blank: Blank, unit: Unit): Piece | undefined {
    const { way, edges: [first, second], cuts, meets, names } = blank;
    const direction = directionOf(way), { perTick } = unit;
    const along = (point: Point): number => reach(first.from, point, direction);
    // how far the two edges start and end along the frame; the first one starts at 0
    const end = along(first.to), otherStart = along(second.from), otherEnd = along(second.to);
    const overall = (Math.max(0, end, otherStart, otherEnd) - Math.min(0, end, otherStart, otherEnd)) / perTick;
    const length = end / perTick, other = reach(second.from, second.to, direction) / perTick;
    if (overall <= ROUNDING || length + other <= ROUNDING) return undefined;

    const angle = (more: number): number => (Math.abs(more) < ROUNDING * perTick ? 0 : degreesOf(more, blank.width * perTick));
    const ends: [End, End] = [
        endOf(cuts[0], meets[0], blank.at?.[0], angle(reach(second.from, first.from, direction)), blank.saw?.[0]),
        endOf(cuts[1], meets[1], blank.at?.[1], angle(reach(first.to, second.to, direction)), blank.saw?.[1]),
    ];
    const exact = ({ x, y }: Point): Point => ({ x: x / perTick, y: y / perTick });
    const why: Term[] = [];
    for (const { what, of, ticks } of blank.why) if (ticks !== 0) why.push({ what, of, ticks: ticks / perTick });
    return {
        part: blank.part, of: blank.of, on: blank.on ?? null, flank: blank.flank,
        ...blank.closes && { closes: blank.closes }, coffers: blank.coffers ?? NONE, nth: blank.nth,
        edges: [edge(names[0], length), edge(names[1], other)], ends,
        long: Math.max(length, other), short: Math.min(length, other), overall, width: blank.width,
        hand: handOf(cuts), handed: isHanded(ends), scribe: blank.scribe ?? 0,
        way: direction, corners: [exact(first.from), exact(first.to), exact(second.to), exact(second.from)],
        top: blank.top, foot: blank.foot, why,
    };
}
const NONE: readonly number[] = [];

function endOf(cut: Cut, meets: string, at: End['at'], angle: number, saw: End['saw']): End {
    return saw ? { cut, meets, at, angle, saw } : { cut, meets, at, angle };
}

function edge(name: EdgeName, length: number): Edge {
    return { name, length };
}

/** Its corners in whole ticks, clockwise on the plan; the first and the last are at its start. */
export function outlineOf({ corners }: Pick<Piece, 'corners'>): Polygon {
    const outline = corners.map(({ x, y }): Point => ({ x: Math.round(x) + 0, y: Math.round(y) + 0 }));
    return isClockwise(outline) ? outline : outline.reverse();
}

/** Reckoned from one of its corners, so that plain numbers are enough for a piece as long as a street. */
function isClockwise([a, ...others]: readonly Point[]): boolean {
    let twice = 0;
    for (let i = 1; i < others.length; i++) {
        const b = others[i - 1]!, c = others[i]!;
        twice += (b.x - a!.x) * (c.y - a!.y) - (c.x - a!.x) * (b.y - a!.y);
    }
    return twice >= 0;
}

const isMiter = (cut: Cut): boolean => cut === 'miter' || cut === 'outside-miter';

/** Standing in the coffer, facing it, groove edge down: the end that is mitered, where one is and the other is not. */
function handOf([left, right]: readonly [Cut, Cut]): Piece['hand'] {
    if (isMiter(left) === isMiter(right)) return null;
    return isMiter(left) ? 'left' : 'right';
}

/** A piece is its own mirror image where both ends lean the same way, as much: to a hundredth of a degree. */
function isHanded([left, right]: readonly [End, End]): boolean {
    return Math.abs(left.angle - right.angle) >= 0.01;
}
