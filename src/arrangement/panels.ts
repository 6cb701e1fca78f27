import { beyond, withoutStraights } from '../plane/cut-off.ts';
import { crossing, directionOf, distanceFrom, lineThrough, offset, turn, type Line } from '../plane/line.ts';
import { distance, lengthOf, reach, reversed, type Point, type Vector } from '../plane/point.ts';
import type { Polygon } from '../plane/polygon.ts';
import type { Flank } from './carriers.ts';
import type { WalkedCoffer } from './coffers.ts';
import type { Cut, PanelCut, Piece, Term } from './model.ts';
import { pieceOf, type Stretch } from './piece.ts';
import type { Panel } from './plan.ts';
import type { Unit } from './unit.ts';

/**
 * A panel over each coffer, as far as the middle of the beams round it: so they meet behind blocking, and all of the blocking hangs under them. One that
 * is no rectangle is cut from the rectangle round it. Where beams stand free in its coffer it comes in parts round them, which meet in seams from edge to
 * edge: those that come out of the fewest sheets, and of these the shortest; common practice, no source. `like`: how the panels of the same plan with its
 * lines elsewhere by a hair are made.
 */
export function panelsOf(panel: Panel, coffers: readonly WalkedCoffer[], unit: Unit, like?: PanelCuts): { readonly pieces: Piece[]; readonly cuts: PanelCuts } {
    const cells = coffers.map(coffer => cellOf(coffer, panel, unit)).filter(({ loops: [outline] }) => outline.length >= 3);
    const common = wayFor(cells.map(({ loops: [outline] }) => outline), panel, unit), cuts = new Map<number, PanelCut>();
    const pieces = cells.flatMap(cell => {
        const cut = like?.get(cell.coffer) ?? cutFor(cell, panel, panel.each ? wayFor([cell.loops[0]], panel, unit) : common, unit);
        cuts.set(cell.coffer, cut);
        return piecesOf(cell, cut, panel, unit);
    });
    return { pieces, cuts };
}

type PanelCuts = ReadonlyMap<number, PanelCut>;

/** Parted the one way or the other, whichever takes fewer sheets and then shorter seams. */
function cutFor(cell: Cell, panel: Panel, way: Line, unit: Unit): PanelCut {
    const { sheet, seams, each } = panel, isParted = cell.loops.length > 1;
    const tried = (isParted ? ['along' as const, 'across' as const] : ['along' as const]).map(parted => {
        let lacks = 0, sheets = 0, long = 0;
        const parts = regionsOf(cell, way, parted, unit).map(({ outline }) => {
            const own = isParted && each ? wayFor([outline], panel, unit) : way, { from, to, left, right } = frameOf(outline, own);
            const wanted = sheet ? sheetsFor({ from, to, left, right }, sheet, unit) : ONE, { along, across } = seams ? wanted : ONE;
            if (!seams && sheetCount(wanted) > 1) lacks++;
            sheets += along * across;
            long += roundOf(outline) / 2 + (along - 1) * (right - left) + (across - 1) * (to - from);
            return { way: directionOf(own), along, across };
        });
        return { cut: { way: directionOf(way), parted, parts }, counts: [lacks, sheets, long] };
    });
    return tried.reduce((best, one) => (compare(one.counts, best.counts) < 0 ? one : best)).cut;
}
type Sheets = Omit<PanelCut['parts'][number], 'way'>;
const ONE: Sheets = { along: 1, across: 1 };

function sheetCount({ along, across }: Sheets): number {
    return along * across;
}

/** By the first in which they differ by more than rounding. */
function compare(a: readonly number[], b: readonly number[]): number {
    return a.map((each, i) => each - b[i]!).find(by => Math.abs(by) > 1) ?? 0;
}

function roundOf(outline: Polygon): number {
    return outline.reduce((sum, point, i) => sum + distance(outline.at(i - 1)!, point), 0);
}

/** So many sheets long and wide. */
function sheetsFor({ from, to, left, right }: Frame, sheet: NonNullable<Panel['sheet']>, { perTick }: Unit): Sheets {
    const parts = (length: number, longest: number): number =>
        (longest > 0 ? Math.min(MOST_PARTS, Math.max(1, Math.ceil(length / perTick / longest - HAIR))) : 1);
    return { along: parts(to - from, sheet.along), across: parts(right - left, sheet.across) };
}
const HAIR = 1e-6;
/** More sheets than anybody puts over a coffer: a mistyped one must not stop the program. */
const MOST_PARTS = 20;

/** `loops`: round it, and round what stands free in it. */
interface Cell { readonly coffer: number; readonly rounds: readonly (readonly Flank[])[]; readonly loops: readonly [Polygon, ...Polygon[]] }

function cellOf({ number, round, roundHoles }: WalkedCoffer, panel: Panel, unit: Unit): Cell {
    const [first, ...others] = [round, ...roundHoles].map(flanks => loopOf(flanks, panel, unit));
    return { coffer: number, rounds: [round, ...roundHoles], loops: [first!, ...others] };
}

function loopOf(round: readonly Flank[], { gap }: Panel, unit: Unit): Polygon {
    // what closes the end of something along a wall stands before the wall
    const edges = round.filter(({ closes }) => !closes).map(flank => offset(flank.base, Math.round(standsOff(flank, gap) * unit.perTick)));
    // two walls in line are one edge
    const kept = edges.filter((edge, i) => !isSame(edges.at(i - 1)!, edge));
    return withoutTwins(kept.flatMap((edge, i) => crossing(kept.at(i - 1)!, edge) ?? []), unit);
}

/** A part of a panel, between the seams that part it beside what stands free in it. `seams`: one where it begins along this axis, one where it ends. */
interface Region { readonly outline: Polygon; readonly axis: Vector; readonly seams: readonly [boolean, boolean] }

/** Parted from edge to edge where what stands free in it begins and ends; of a panel that nothing stands in, all of it. */
function regionsOf({ loops }: Cell, way: Line, parted: PanelCut['parted'], unit: Unit): Region[] {
    const [outline, ...holes] = loops, axis = parted === 'along' ? rightOf(way) : directionOf(way);
    const extents = holes.map(hole => hole.map(point => Math.round(reach(ORIGIN, point, axis)))).flatMap(places => [Math.min(...places), Math.max(...places)]);
    const stops = [...new Set(extents)].sort((a, b) => a - b);
    if (stops.length === 0) return [{ outline, axis, seams: [false, false] }];
    const ends = [-Infinity, ...stops, Infinity];
    return ends.slice(1).flatMap((to, i) => {
        const from = ends[i]!, strips = between(loops, axis, from, to).map(strip => cleaned(strip, unit)).filter(({ length }) => length >= 3);
        const other = parted === 'along' ? directionOf(way) : rightOf(way), place = (strip: Polygon): number => Math.min(...strip.map(point => reach(ORIGIN, point, other)));
        return strips.sort((a, b) => place(a) - place(b)).map((strip): Region => ({ outline: strip, axis, seams: [i > 0, i < ends.length - 2] }));
    });
}

/** What of a region lies between two cuts across an axis. */
function between(loops: readonly Polygon[], axis: Vector, from: number, to: number): Polygon[] {
    const after = from === -Infinity ? loops : beyond(loops, axis, from);
    return to === Infinity ? [...after] : beyond(after, reversed(axis), 0 - to);
}

function cleaned(outline: Polygon, unit: Unit): Polygon {
    return withoutStraights(withoutTwins(outline, unit), unit.perTick / 2);
}

/** Where three edges meet in a point it is one corner. */
function withoutTwins(outline: Polygon, { perTick }: Unit): Polygon {
    return outline.filter((point, i) => distance(outline.at(i - 1)!, point) > perTick);
}

/** How far a panel's edge lies from a wall, from the middle of a line, or of what hangs from the ceiling. */
function standsOff({ of }: Flank, gap: number): number {
    if (of.kind === 'wall') return gap;
    return of.beam.kind === 'box' && of.beam.wraps ? of.beam.inside / 2 : gap / 2;
}

function isSame(a: Line, b: Line): boolean {
    return turn(a, b) === 0 && a.a * b.a + a.b * b.b > 0;
}

/** The way in which they come out of the fewest sheets, each by itself; of two alike that in which they reach farther, all together. */
function wayFor(outlines: readonly Polygon[], { ways, sheet }: Pick<Panel, 'ways' | 'sheet'>, unit: Unit): Line {
    const tried = ways.map(way => {
        const line = lineThrough(ORIGIN, way), frames = outlines.map(outline => frameOf(outline, line));
        const sheets = sheet ? frames.reduce((sum, frame) => sum + sheetCount(sheetsFor(frame, sheet, unit)), 0) : 0;
        return { line, sheets, reach: frames.reduce((sum, { from, to }) => sum + to - from, 0) };
    });
    return tried.reduce((best, one) => (one.sheets < best.sheets || one.sheets === best.sheets && one.reach > best.reach ? one : best)).line;
}
const ORIGIN: Point = { x: 0, y: 0 };

function piecesOf(cell: Cell, { way: whole, parted, parts }: PanelCut, panel: Panel, unit: Unit): Piece[] {
    let nth = 0;
    return regionsOf(cell, lineThrough(ORIGIN, whole), parted, unit).flatMap(({ outline, axis, seams }, i) => {
        const { way: direction, along, across } = parts[i] ?? { way: whole, ...ONE }, way = lineThrough(ORIGIN, direction);
        const { from, to, left, right } = frameOf(outline, way), parting = seamsAlong(direction, axis, seams), isOne = along * across === 1;
        return Array.from({ length: along * across }, (_, k): Piece[] => {
            const row = Math.floor(k / along), column = k % along, spliced = [column > 0 || parting[0], column < along - 1 || parting[1]] as const;
            const rows = isOne ? [outline] : nthOf([outline], rightOf(way), [left, right], row, across);
            const slots = isOne ? rows : nthOf(rows, directionOf(way), [from, to], column, along).map(slot => cleaned(slot, unit));
            return slots.filter(({ length }) => length >= 3).flatMap(slot => blank(cell, slot, spliced, ++nth, panel, way, unit));
        }).flat();
    });
}

/** What of it lies in one of so many equal shares of its extent along an axis. */
function nthOf(loops: readonly Polygon[], axis: Vector, [low, high]: readonly [number, number], nth: number, count: number): Polygon[] {
    const at = (share: number): number => low + (high - low) * share / count;
    return between(loops, axis, nth === 0 ? -Infinity : at(nth), nth === count - 1 ? Infinity : at(nth + 1));
}

/** Seams at the ends of what lies along the axis that they part it across, or nearly. */
function seamsAlong(way: Vector, axis: Vector, [low, high]: Region['seams']): readonly [boolean, boolean] {
    const along = (way.x * axis.x + way.y * axis.y) / (lengthOf(way) * lengthOf(axis));
    return Math.abs(along) < Math.SQRT1_2 ? [false, false] : along > 0 ? [low, high] : [high, low];
}

/** From where to where it lies along a way, and to the right of it. */
interface Frame { readonly from: number; readonly to: number; readonly left: number; readonly right: number }

function frameOf(outline: Polygon, way: Line): Frame {
    const along = outline.map(point => reach(ORIGIN, point, directionOf(way))), across = outline.map(point => reach(ORIGIN, point, rightOf(way)));
    return { from: Math.min(...along), to: Math.max(...along), left: Math.min(...across), right: Math.max(...across) };
}

function rightOf({ a, b }: Line): Vector {
    return { x: a, y: b };
}

function pointAt(along: number, across: number, way: Line): Point {
    const u = directionOf(way), v = rightOf(way), long = lengthOf(u);
    return { x: (u.x * along + v.x * across) / long + 0, y: (u.y * along + v.y * across) / long + 0 };
}

/** `spliced`: whether another part of the same panel lies before it, and after it. */
function blank(
    { coffer, rounds, loops }: Cell, outline: Polygon, spliced: readonly [boolean, boolean], nth: number,
    { thickness, gap }: Panel, way: Line, unit: Unit,
): Piece[] {
    const { from, to, left, right } = frameOf(outline, way), { perTick } = unit;
    const edge = (across: number): Stretch => ({ from: pointAt(from, across, way), to: pointAt(to, across, way) });
    const ends = [-1, 1].map(end => (loops.length === 1 ? facing(rounds[0]!, way, end) : nearest(rounds.flat(), outline, way, end))), cuts = spliced.map((is): Cut => (is ? 'splice' : 'square'));
    // what two carriers are apart, less what is left open at each
    const isWhole = outline === loops[0] && loops.length === 1 && isRectangle(outline, { from, to, left, right }, perTick);
    const open = isWhole ? ends.map(flank => ({ of: flank.of.name, units: Math.round(standsOff(flank, gap) * perTick) })) : [];
    const piece = pieceOf({
        part: 'panel', of: 'panel', coffers: [coffer], nth,
        way, names: ['left', 'right'], edges: [edge(left), edge(right)], cuts: [cuts[0]!, cuts[1]!], meets: [ends[0]!.of.name, ends[1]!.of.name],
        width: (right - left) / perTick, top: 0 - thickness, foot: 0,
        why: [
            { what: 'clear', of: 'panel', ticks: open.reduce((sum, { units }) => sum + units, to - from) },
            ...open.map(({ of, units }): Term => ({ what: 'end', of, ticks: 0 - units })),
        ],
    }, unit);
    if (!piece) return [];
    const shape = outline.map(({ x, y }): Point => ({ x: x / perTick, y: y / perTick }));
    return [isRectangle(outline, { from, to, left, right }, perTick) ? piece : { ...piece, shape }];
}

/** The flank at whose edge it ends, against the way where `end` is -1. */
function facing(round: readonly Flank[], way: Line, end: number): Flank {
    const { x, y } = directionOf(way);
    const toward = ({ base: { a, b } }: Flank): number => 0 - end * (a * x + b * y) / lengthOf({ x: a, y: b });
    return round.reduce((best, flank) => (toward(flank) > toward(best) + 1e-9 * lengthOf({ x, y }) ? flank : best));
}

/** Where beams stand free in the coffer too: of those that look against the end the one whose edge it lies at. */
function nearest(flanks: readonly Flank[], outline: Polygon, way: Line, end: number): Flank {
    const axis = directionOf(way), place = (point: Point): number => end * reach(ORIGIN, point, axis);
    const last = outline.reduce((far, point) => (place(point) > place(far) ? point : far));
    const off = ({ base }: Flank): number => Math.abs(distanceFrom(base, last));
    const looking = flanks.filter(({ base: { a, b } }) => end * (a * axis.x + b * axis.y) < 0);
    return (looking.length > 0 ? looking : flanks).reduce((best, flank) => (off(flank) < off(best) ? flank : best));
}

/** It fills the rectangle round it, but for less than a tick along its edges: what is planed off. */
function isRectangle(outline: Polygon, { from, to, left, right }: Frame, perTick: number): boolean {
    const [{ x, y }] = outline as [Point];
    const twice = outline.reduce((sum, a, i) => {
        const b = outline[(i + 1) % outline.length]!;
        return sum + (a.x - x) * (b.y - y) - (b.x - x) * (a.y - y);
    }, 0);
    return Math.abs(twice / 2 - (to - from) * (right - left)) < perTick * (to - from + right - left);
}
