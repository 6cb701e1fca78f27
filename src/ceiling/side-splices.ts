import type { Arrangement, Piece } from '../arrangement/model.ts';
import { grouped } from '../plain/groups.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import { lengthOf, type Point } from '../plane/point.ts';
import { diesByChoice, onLine, placeAlong } from './along.ts';
import { bayAt } from './bays.ts';
import { sectionAt } from './flanks.ts';
import { longestPiece } from './longest.ts';
import { alongWall } from './plan.ts';
import type { Ceiling, HalfBeam, Line, Splice, TrimSplice, WholeSection } from './model.ts';
import { areWithin, spliceAnywhere, spliceOnCrossings } from './splices.ts';
import { crossingsOn, placeOf, placeOnWall, spotOf } from './wall-splices.ts';

/** Splices of what nobody but its own length tells: of sides, with their moldings, and of the trim. */
export type Spliced = Pick<Ceiling, 'around' | 'lines' | 'trimSplices'>;

/**
 * The same with sides spliced that are longer than their boards, or than those of their moldings, and trim. Sides: where their wall says so, if that is enough;
 * else behind what dies into them; else anywhere, off all that dies into them; away from the splices of their bottom, and those of the other flank. Trim:
 * scarfed anywhere, away from those of the sides that it lies on. Undefined where nothing is too long; what nothing helps stays as it is: the rule
 * longer-than-the-board tells of it. Common practice, no source.
 */
export function withSideSplices(ceiling: Ceiling, { pieces }: Arrangement, step: Ticks): Spliced | undefined {
    const long = tooLong(ceiling, pieces);
    if (long.length === 0) return undefined;
    const sides = grouped(long.filter(({ part }) => part === 'side'), ({ of }) => of);
    const around = Object.fromEntries(Object.entries(ceiling.around).map(([wall, own]) => {
        const there = sides.get(wall);
        return [wall, there && own?.kind === 'half-beam' ? atWall(wall, own, there, ceiling, step) : own];
    }));
    const lines = ceiling.lines.map(line => { const there = sides.get(line.name); return there ? alongLine(line, there, ceiling, step) : line; });
    const spots = spotsOfSides({ around, lines, walls: ceiling.walls }), trimSplices = long.flatMap(piece => (piece.part === 'trim' ? ofTrim(piece, spots, ceiling, step) : []));
    return { around, lines, ...trimSplices.length > 0 && { trimSplices } };
}

function tooLong({ beams, lines, around, room: { job, grid } }: Ceiling, pieces: readonly Piece[]): Piece[] {
    const sections = new Map<string, Pick<Line, 'section' | 'otherSide'>>(lines.map(line => [line.name, line]));
    for (const [wall, own] of Object.entries(around)) if (own?.kind === 'half-beam' && own.perimeter.splices.value !== 'never') sections.set(wall, own);
    const most = new Map<WholeSection, number>(), trim = beams?.profile.trim?.stock, ofTrim = grid.splices.value === 'on-crossings' && trim ? longestPiece(trim.value, job) : Infinity;
    return pieces.filter(({ part, of, flank, overall }) => {
        if (part === 'trim') return overall > ofTrim;
        const beam = part === 'side' ? sections.get(of) : undefined, section = beam && flank && sectionAt(beam, flank);
        if (!section) return false;
        if (!most.has(section)) most.set(section, longestSide(section, job));
        return overall > most.get(section)!;
    });
}

function longestSide({ profile: { sides, under } }: WholeSection, job: Ceiling['room']['job']): number {
    return Math.min(...[sides?.stock, under?.stock].map(stock => (stock ? longestPiece(stock.value, job) : Infinity)));
}

/** A joint stays so far off the edges of what ends at the face. Common practice, no source. */
const OFF_EDGES: Ticks = 2 * TICKS_PER_INCH;

/** Something that dies into a side: where its middle is, along the side, and its edges there. */
interface Dying { readonly at: Ticks; readonly place: string; readonly low: number; readonly high: number }
interface Run {
    readonly from: number; readonly to: number; readonly most: number;
    readonly dying: readonly Dying[]; readonly neighbor: readonly Splice[]; readonly step: Ticks;
    place(at: Ticks): string;
}

function spliced({ from, to, most, dying, neighbor, step, place }: Run): Splice[] {
    const run = { from, to, most, neighbor, step };
    const isClear = (at: Ticks): boolean => dying.every(({ low, high }) => at < low - OFF_EDGES || at > high + OFF_EDGES);
    const found = spliceOnCrossings({ ...run, crossings: dying }) ?? spliceAnywhere({ ...run, isClear, place }) ?? [];
    return found.map(({ at, place }) => ({ at: Math.round(at), place }));
}

function spanOf(corners: readonly Point[], placeOn: (corner: Point) => number): readonly [number, number] {
    const places = corners.map(placeOn);
    return [Math.min(...places), Math.max(...places)];
}

function atWall(name: string, own: HalfBeam, long: readonly Piece[], ceiling: Ceiling, step: Ticks): HalfBeam {
    const wall = ceiling.walls.find(each => each.name === name)!, most = longestSide(own.section, ceiling.room.job), ends = crossingsOn(wall, ceiling.lines);
    const dying = ends.filter(({ line }) => line.section.depth.ticks < own.section.depth.ticks || diesByChoice(line, ceiling))
        .map(({ line, ...end }): Dying => { const half = (line.high - line.low) / 2; return { ...spotOf(end), low: end.at - half, high: end.at + half }; });
    const sideSplices = long.flatMap(({ corners }) => {
        const [from, to] = spanOf(corners, corner => placeOnWall(wall, corner));
        const said = own.splices.filter(splice => splice.said && splice.at > from && splice.at < to), stops = [from, ...said.map(({ at }) => at), to];
        if (said.length > 0 && areWithin(stops, most)) return said;
        return spliced({ from, to, most, dying, neighbor: own.splices, step, place: at => placeOf(at, ends) });
    });
    return sideSplices.length > 0 ? { ...own, sideSplices } : own;
}

/** Those of the left flank first; those of the right one keep away from them. */
function alongLine(line: Line, long: readonly Piece[], { room }: Ceiling, step: Ticks): Line {
    const splicing = room.lines.find(({ name }) => name === line.name)?.splicing ?? room.grid.splices;
    if (splicing.value !== 'on-crossings') return line;
    const onFlank = (flank: 'left' | 'right', others: readonly Splice[]): readonly Splice[] => {
        const most = longestSide(sectionAt(line, flank), room.job);
        const dying = line.passes.filter(({ relation, stem }) => relation === 'over' && (stem === null || stem === flank))
            .map(({ at, low, high, of }): Dying => ({ at: Math.floor(at), place: `on line ${of}`, low: Math.min(low, high), high: Math.max(low, high) }));
        return long.filter(piece => piece.flank === flank).flatMap(({ corners }) => {
            const [from, to] = spanOf(corners, corner => placeAlong(line, corner));
            return spliced({ from, to, most, dying, neighbor: [...line.splices, ...others], step, place: at => `in bay ${bayAt(line, at)}` });
        }).sort((a, b) => a.at - b.at);
    };
    const left = onFlank('left', []), right = onFlank('right', left);
    return left.length + right.length > 0 ? { ...line, sideSplices: { left, right } } : line;
}

/** Where sides are spliced, on the plan. */
function spotsOfSides({ around, lines, walls }: Pick<Ceiling, 'around' | 'lines' | 'walls'>): Point[] {
    return [
        ...lines.flatMap(line => [...line.sideSplices?.left ?? [], ...line.sideSplices?.right ?? []].map(({ at }) => onLine(line, at))),
        ...walls.flatMap(wall => {
            const own = around[wall.name];
            return own?.kind === 'half-beam' ? (own.sideSplices ?? []).map(({ at }) => alongWall(wall, at)) : [];
        }),
    ];
}

/** A splice so near to an edge of a coffer may be in the side that its trim lies on. */
const BESIDE: Ticks = 12 * TICKS_PER_INCH;

/** Along its back; a scarf takes as much more of a board as it is thick. */
function ofTrim(piece: Piece, spots: readonly Point[], { beams, room: { job } }: Ceiling, step: Ticks): TrimSplice[] {
    const { corners: [, , end, start], coffers, nth, way, width } = piece, most = longestPiece(beams!.profile.trim!.stock!.value, job) - width;
    const place = (spot: Point): number => placeAlong({ heading: way }, spot) - placeAlong({ heading: way }, start);
    const isBeside = ({ x, y }: Point): boolean => Math.abs((x - start.x) * way.y - (y - start.y) * way.x) < BESIDE * lengthOf(way);
    const neighbor = spots.filter(isBeside).map((spot): Splice => ({ at: place(spot), place: '' }));
    const found = spliceAnywhere({ from: 0, to: place(end), most, neighbor, step, isClear: () => true, place: () => '' }) ?? [];
    return found.map(({ at }) => ({ coffer: coffers[0]!, edge: nth, at: Math.round(at) }));
}
