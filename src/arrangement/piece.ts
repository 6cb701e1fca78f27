import { degreesOf } from '../plane/angle.ts';
import { directionOf, type Line } from '../plane/line.ts';
import { reach, type Point } from '../plane/point.ts';
import type { Compass, Cut, Edge, EdgeName, End, Part, Piece, Term } from './model.ts';
import { tickPoint, type Unit } from './unit.ts';

/** One long edge of a piece, in units. */
export interface Stretch { readonly from: Point; readonly to: Point }

/** A piece as its part makes it; lengths, angles, hand and outline follow. */
export interface Blank {
    readonly part: Part;
    readonly of: string;
    readonly on?: Compass | null;
    readonly nth: number;
    /** The way its frame runs. */
    readonly way: Line;
    readonly names: readonly [EdgeName, EdgeName];
    readonly edges: readonly [Stretch, Stretch];
    readonly cuts: readonly [Cut, Cut];
    readonly meets: readonly [string, string];
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

/** The finished piece; undefined where it has no length. Coffers are filled in once they have numbers. */
export function pieceOf(blank: Blank, unit: Unit): Piece | undefined {
    const { way, edges: [first, second], cuts, meets, names } = blank;
    const direction = directionOf(way), { perTick } = unit;
    const along = (from: Point, to: Point): number => reach(from, to, direction);
    const places = [first.from, first.to, second.from, second.to].map(point => along(first.from, point));
    const overall = (Math.max(...places) - Math.min(...places)) / perTick;
    const lengths = [along(first.from, first.to) / perTick, along(second.from, second.to) / perTick] as const;
    if (overall <= ROUNDING || lengths[0] + lengths[1] <= ROUNDING) return undefined;

    const beyond = [along(second.from, first.from), along(first.to, second.to)] as const;
    const ends = beyond.map((more, i): End => {
        const saw = blank.saw?.[i];
        return { cut: cuts[i]!, meets: meets[i]!, angle: Math.abs(more) < ROUNDING * perTick ? 0 : degreesOf(more, blank.width * perTick), ...saw && { saw } };
    }) as [End, End];
    const spots = [first.from, first.to, second.to, second.from] as const, outline = spots.map(spot => tickPoint(spot, unit));
    const exact = ({ x, y }: Point): Point => ({ x: x / perTick, y: y / perTick });
    return {
        part: blank.part, of: blank.of, on: blank.on ?? null, coffers: [], nth: blank.nth,
        edges: [edge(names[0], lengths[0]), edge(names[1], lengths[1])], ends,
        long: Math.max(...lengths), short: Math.min(...lengths), overall, width: blank.width,
        hand: handOf(cuts), handed: isHanded(ends), scribe: blank.scribe ?? 0,
        way: direction, corners: [exact(spots[0]), exact(spots[1]), exact(spots[2]), exact(spots[3])], outline: isClockwise(outline) ? outline : outline.reverse(), top: blank.top, foot: blank.foot,
        why: blank.why.filter(term => term.ticks !== 0).map(term => ({ ...term, ticks: term.ticks / perTick })),
    };
}

function edge(name: EdgeName, length: number): Edge {
    return { name, length };
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
