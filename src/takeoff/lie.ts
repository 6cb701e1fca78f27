import { compassOf } from '../arrangement/compass.ts';
import type { Cut, Piece as Strip } from '../arrangement/model.ts';
import { bayAt } from '../ceiling/bays.ts';
import type { Flank } from '../ceiling/flanks.ts';
import { arrangedOf, type LaidOut } from '../ceiling/plan.ts';
import { endsNamed, isForward } from '../ceiling/shape.ts';
import { grouped } from '../plain/groups.ts';
import { kept } from '../plain/kept.ts';
import { lengthOf, reach, reversed, type Point, type Vector } from '../plane/point.ts';
import { extentOf } from '../plane/polygon.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { spliceLetter, type Place } from './ids.ts';
import type { Box, Corners, EndCut, Part } from './model.ts';

/**
 * How a piece of the arrangement lies in the ceiling, as cut lists tell it: the end to the west or north first, and the long edge
 * that its length is told by (`back`: of a side its back, of what runs along a wall its wall edge, of what lies in a beam that to the west
 * or north) before the other.
 */
export interface Lie {
    readonly strip: Strip;
    /** From the first end to the last. */
    readonly way: Vector;
    /** Along the back, then back along the face; not rounded. */
    readonly corners: Corners;
    /** From end to end along its way, as told by `placeAlong`. */
    readonly from: number; readonly to: number;
    /** Lengths of both long edges. */
    readonly back: number; readonly face: number;
    /** From the first of its corners to the last. */
    readonly overall: number;
    readonly ends: readonly [EndCut, EndCut];
    readonly cuts: readonly [Cut, Cut];
    /** Null at a splice. */
    readonly meets: readonly [string | null, string | null];
    /** The flanks of these that it meets, where it stands between faces or edges of beams. */
    readonly at: readonly [Flank | undefined, Flank | undefined];
}

function lieOf(strip: Strip): Lie {
    const { corners: [a, b, c, d], edges, ends } = strip;
    const turned = runsBack(strip.way);
    const firstIsBack = edges[0].name === 'wall' || isWestOrNorth(strip);
    const corners: Corners = firstIsBack ? turned ? [b, a, d, c] : [a, b, c, d] : turned ? [c, d, a, b] : [d, c, b, a];
    const first = ends[turned ? 1 : 0], last = ends[turned ? 0 : 1], way = turned ? reversed(strip.way) : strip.way;
    const atA = placeAlong(way, a), atB = placeAlong(way, b), atC = placeAlong(way, c), atD = placeAlong(way, d);
    const right = { x: 0 - way.y, y: way.x }, isFaceRight = right.x * (corners[3].x - corners[0].x) + right.y * (corners[3].y - corners[0].y) > 0;
    const across = isFaceRight ? reversed(right) : right;
    return {
        strip, way, corners, from: Math.min(atA, atB, atC, atD), to: Math.max(atA, atB, atC, atD),
        back: edges[firstIsBack ? 0 : 1].length, face: edges[firstIsBack ? 1 : 0].length, overall: strip.overall,
        ends: [endCut(first, firstIsBack, across), endCut(last, firstIsBack, across)], cuts: [first.cut, last.cut], meets: [metAt(first), metAt(last)],
        at: [first.at, last.at],
    };
}

/** To the west, or of what lies nearer north-south to the north; at 45 degrees to the west. */
export function runsBack({ x, y }: Vector): boolean {
    return Math.abs(x) > Math.abs(y) - LEVEL ? x < 0 : y < 0;
}
const LEVEL = 1e-6;

function metAt({ cut, meets }: Strip['ends'][number]): string | null {
    return cut === 'splice' ? null : meets;
}

/** How far a point lies along a direction from the corner where x and y begin. */
export function placeAlong(way: Vector, point: Point): number {
    return reach({ x: 0, y: 0 }, point, way);
}

/** Whether, of what lies in a beam, the first edge is the one to the west or north; of what runs at 45 degrees, to the west. */
function isWestOrNorth({ edges, way: { x, y } }: Strip): boolean {
    return edges[0].name === 'left' && (y < x || y === x && y < 0);
}

/** Its angle is positive where the back is the longer. `back`: which way that lies from the face. */
function endCut({ cut, angle: second, saw: flat }: Strip['ends'][number], firstIsBack: boolean, back: Vector): EndCut {
    if (second === 0) return SQUARE_BY_CUT[cut] ??= { cut: cut === 'coped' ? cut : 'square', how: cut };
    const angle = firstIsBack ? 0 - second : second, longer = compassOf(angle > 0 ? back : reversed(back));
    return { cut: cut === 'coped' ? cut : cut === 'miter' || cut === 'outside-miter' ? 'miter' : 'angled', degrees: angle, longer, how: cut, ...flat && { flat } };
}
/** Most ends are square: one for each way of meeting serves them all. */
const SQUARE_BY_CUT: Partial<Record<Cut, EndCut>> = {};
export const SQUARE: EndCut = { cut: 'square' };

/** The corners of a piece once it is coped: at such an end it stands against the face of the other, which at a right angle is square to it. */
export function onceCoped({ corners: [back, backEnd, faceEnd, face], cuts, way }: Lie): Corners {
    const [first, last] = cuts, length = lengthOf(way);
    const moved = (point: Point, from: Point, turn: 1 | -1): Point => {
        const by = turn * copedOff((placeAlong(way, from) - placeAlong(way, point)) * turn, Math.abs(acrossFrom(way, point, from))) / length;
        return { x: point.x + way.x * by, y: point.y + way.y * by };
    };
    return [first === 'coped' ? moved(back, face, 1) : back, last === 'coped' ? moved(backEnd, faceEnd, -1) : backEnd, faceEnd, face];
}

/**
 * What coping takes off the back of a piece whose miter would take `miter` off its face over a thickness of `across`: it ends along the face of the
 * other, which stands at an angle b to it, with cot(b/2) = miter / across. That face meets the back at miter - across x cot b.
 */
export function copedOff(miter: number, across: number): number {
    if (miter <= 0) return 0;
    // cot b = (cot² (b/2) - 1) / (2 cot (b/2))
    const half = miter / across;
    return miter - across * (half * half - 1) / (2 * half);
}

function acrossFrom(way: Vector, point: Point, to: Point): number {
    return ((to.y - point.y) * way.x - (to.x - point.x) * way.y) / lengthOf(way);
}

/** Corners in whole ticks, as they are drawn. */
export function inTicks(corners: Corners): Corners {
    const rounded = ({ x, y }: Point): Point => ({ x: Math.round(x) + 0, y: Math.round(y) + 0 });
    const [a, b, c, d] = corners;
    return [rounded(a), rounded(b), rounded(c), rounded(d)];
}

/** The box around it, from `top` down to `foot`. */
export function boxAround(corners: Corners, [top, foot]: readonly [Ticks, Ticks]): Box {
    const { west, east, north, south } = extentOf(corners);
    return { west, east, north, south, top, foot };
}

/** A piece as it is drawn, the same one with the coffers at the sizes they are cut to, and its name. */
export interface Pair {
    readonly exact: Lie; readonly cut: Lie;
    readonly named: Place;
    /** It runs from wall to wall or to a splice, and is cut to these and to no coffer. */
    readonly through: boolean;
}

/** Kept for the dry fit, which follows the take-off. */
export const pairsOf: (ceiling: LaidOut) => Pairs = kept(ceiling => new Pairs(ceiling), 2);
/** Both long edges of a piece that stands between others, and what it takes of a board. */
export function edgesOf({ exact, cut }: Pair): Lengths {
    return { face: exact.face, back: exact.back, overall: exact.overall, cutFace: cut.face, cutBack: cut.back, cutOverall: cut.overall };
}
/** As they stand, and as they are cut. */
export interface Lengths {
    readonly face: number; readonly back: number; readonly overall: number;
    readonly cutFace: number; readonly cutBack: number; readonly cutOverall: number;
}

/** Every piece of the arrangement, by part and by what it belongs to: a line, a wall, a trim. */
export class Pairs {
    private readonly byPlace = new Map<string, Pair[]>();
    private readonly names = new Map<Strip, Place>();

    constructor(ceiling: LaidOut) {
        const { exact, asCut } = arrangedOf(ceiling), { lines } = ceiling;
        const walls = new Set(ceiling.walls.map(({ name }) => name)), shaped = new Map(ceiling.walls.map(wall => [wall.name, wall] as const));
        const endOf = (name: string, end: 'start' | 'end'): string => { const wall = shaped.get(name)!; return endsNamed(wall)[(end === 'start') === isForward(wall) ? 0 : 1]; };
        const ofName = new Map(lines.map(line => [line.name, line]));
        // most rooms are drawn at the sizes that they are cut to
        const sameAsCut = exact === asCut ? undefined : new Map(asCut.pieces.map(strip => [keyOf(strip), strip]));
        const both = exact.pieces.map(strip => {
            const lie = lieOf(strip), other = sameAsCut?.get(keyOf(strip));
            return { exact: lie, cut: other ? lieOf(other) : lie };
        });
        const trims = new Map<string, number>();
        // a coffer may have several edges that look the same way
        let spliced = 0;
        const nameOfTrim = ({ coffers, on, ends: [start, end] }: Strip): Place => {
            const key = `${coffers[0]} ${on}`, goesOn = start.cut === 'splice', nth = (trims.get(key) ?? 0) + (goesOn ? 0 : 1);
            trims.set(key, nth);
            spliced = goesOn ? spliced + 1 : 0;
            const letter = goesOn || end.cut === 'splice' ? spliceLetter(spliced, 2) : null;
            return { coffer: coffers[0]!, on, ...nth > 1 ? { nth: letter ? `${nth}-${letter}` : nth } : letter !== null && { nth: letter } };
        };
        const panels = grouped(both.filter(({ exact: { strip } }) => strip.part === 'panel'), ({ exact: { strip } }) => strip.coffers[0]);
        const nameOfPanel = ({ coffers: [coffer], nth }: Strip): Place => ({ coffer: coffer!, nth: spliceLetter(nth - 1, panels.get(coffer)!.length) });
        for (const [key, lies] of grouped(both, ({ exact: { strip } }) => `${strip.part} ${strip.of}`)) {
            const { part, of } = lies[0]!.exact.strip, wall = walls.has(of) ? of : undefined;
            const line = ofName.get(of), lying = part === 'bottom' || part === 'blocking' || part === 'beam';
            const runs = wall ? !isAlongSide(part) : lying && line?.through === true && isInOne(lies);
            const aside = !wall && isAlongSide(part);
            // what stands across an end of a half beam is counted by itself
            if (wall || lying || aside) lies.sort((a, b) => closing(a) - closing(b) || a.exact.from - b.exact.from);
            const toWalls = wall !== undefined || line !== undefined && walls.has(line.from) && walls.has(line.to);
            // what lies is lettered where it is spliced: of what runs through all of it, of what is cut in bays the pieces that begin in one
            const bays = lies.map(({ exact }) => (runs || !line ? null : bayAt(line, exact.from)));
            // of what stands beside the line the left flank and the right one are counted apart
            const placed = lies.map(({ exact: { strip } }, i) => `${bays[i]} ${aside ? strip.flank : ''}`), inBay = grouped(placed, place => place), before = new Map<string, number>();
            this.byPlace.set(key, lies.map(({ exact, cut }, i) => {
                const bay = bays[i]!, nth = before.get(placed[i]!) ?? 0;
                const letter = runs || lying || aside ? spliceLetter(nth, inBay.get(placed[i]!)!.length) : null;
                before.set(placed[i]!, nth + 1);
                const place = exact.strip.closes ? { wall: of, nth: `return-${endOf(of, exact.strip.closes)}` } : wall ? nameAtWall(part, wall, i, letter) : part === 'trim' ? nameOfTrim(exact.strip) : part === 'panel' ? nameOfPanel(exact.strip) : nameOf(exact.strip, bay, letter);
                this.names.set(exact.strip, place);
                return { exact, cut, through: runs && toWalls, named: place };
            }));
        }
    }
    of(part: Strip['part'], owner: string): readonly Pair[] {
        return this.byPlace.get(`${part} ${owner}`) ?? [];
    }
    /** Those of one part and one owner together. */
    groups(): readonly (readonly Pair[])[] {
        return [...this.byPlace.values()];
    }
    nameOf(strip: Strip): Place {
        return this.names.get(strip)!;
    }
    /** The part that lists know it by. */
    partOf({ part }: Strip): Part {
        return part === 'wall-cleat' ? 'cleat' : part === 'beam' ? 'timber' : part;
    }
}

function closing({ exact: { strip } }: Pick<Pair, 'exact'>): number {
    return strip.closes === undefined ? 0 : 1;
}

function isAlongSide(part: Strip['part']): boolean {
    return part === 'side' || part === 'cleat' || part === 'molding';
}

/** What a piece is found by in the other arrangement. */
function keyOf({ part, of, on, nth, coffers }: Strip): string {
    return `${part} ${of} ${on} ${nth} ${part === 'trim' || part === 'panel' ? coffers[0] : ''}`;
}

/** Whether it runs through in one piece, but for its splices: blocking is cut at a beam that has none, since it wraps something. */
function isInOne(lies: readonly Pick<Pair, 'exact'>[]): boolean {
    return lies.reduce((sum, { exact: { cuts } }) => sum + cuts.filter(cut => cut === 'splice').length, 0) === 2 * (lies.length - 1);
}

/** `bay`: the one it begins in; null of what is cut nowhere. `letter`: where it is spliced which piece it is. */
function nameOf({ part, of, on }: Strip, bay: number | null, letter: string | null): Place {
    switch (part) {
        case 'side': case 'cleat': case 'molding': return { line: of, bay, on, ...letter !== null && { nth: letter } };
        default: return { line: of, bay, nth: letter };
    }
}

/** Bays of a half beam's sides are counted from the west or north. */
function nameAtWall(part: Strip['part'], wall: string, index: number, letter: string | null): Place {
    switch (part) {
        case 'band': return { on: wall, nth: letter };
        case 'wall-cleat': return { wall, nth: letter ? `wall-${letter}` : 'wall' };
        case 'side': case 'cleat': case 'molding': return { wall, bay: index + 1 };
        default: return { wall, nth: letter };
    }
}

/**
 * Where the pieces of a run from wall to wall meet: at a mark of the tape, counted from the start of the run, so that it is no shorter or
 * longer for a splice.
 */
export function marksOf(pairs: readonly Pair[], step: Ticks): (place: number) => number {
    const start = Math.min(...pairs.map(({ exact }) => exact.from)), end = Math.max(...pairs.map(({ exact }) => exact.to));
    return place => place === end ? end : start + Math.round((place - start) / step) * step;
}
