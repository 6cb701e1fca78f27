import { crossing, directionOf, lineThrough, offset, turn, type Line } from '../plane/line.ts';
import { grouped } from '../plain/groups.ts';
import { distance, lengthOf, reach, type Point, type Vector } from '../plane/point.ts';
import type { Polygon } from '../plane/polygon.ts';
import type { Flank } from './carriers.ts';
import type { WalkedCoffer } from './coffers.ts';
import type { Cut, Piece, Term } from './model.ts';
import { pieceOf, type Stretch } from './piece.ts';
import type { Panel } from './plan.ts';
import type { Trouble } from './troubles.ts';
import type { Unit } from './unit.ts';

/** A panel comes out of a sheet in one, and not with a hole in it. */
export function roundTroubles(coffers: readonly WalkedCoffer[], troubles: Trouble[]): void {
    for (const { number, holes } of coffers) if (holes[0]) troubles.push({ kind: 'panel-with-a-hole', coffer: number, line: holes[0][0]!.flanks[0]!.of.name });
}

/**
 * A panel over each coffer, as far as the middle of the beams round it: so they meet behind blocking, and all of the blocking hangs under them. One that
 * is no rectangle is cut from the rectangle round it. `like`: the pieces of the same plan with its lines elsewhere by a hair, whose panels these are to be.
 */
export function panelsOf(panel: Panel, coffers: readonly WalkedCoffer[], unit: Unit, like?: readonly Piece[]): Piece[] {
    const cells = coffers.map(({ number, round }) => cellOf(round, panel, number, unit)).filter(({ outline }) => outline.length >= 3);
    const common = wayFor(cells, panel, unit), before = like && grouped(like.filter(({ part }) => part === 'panel'), ({ coffers: [coffer] }) => coffer);
    return cells.flatMap(cell => {
        const same = before?.get(cell.coffer), way = same ? lineThrough(ORIGIN, same[0]!.way) : panel.each ? wayFor([cell], panel, unit) : common;
        return piecesOf(cell, same ? partsAs(same) : partsOf(cell, panel, way, unit), panel, way, unit);
    });
}

/** In how many a panel comes, along it and across. */
interface Parts { readonly along: number; readonly across: number }

function partsAs(pieces: readonly Piece[]): Parts {
    const across = pieces.filter(({ ends: [{ cut }] }) => cut !== 'splice').length;
    return { along: pieces.length / across, across };
}

function partsOf({ outline }: Cell, { sheet, seams }: Panel, way: Line, unit: Unit): Parts {
    return sheet && seams && isConvex(outline) ? sheetsFor(frameOf(outline, way), sheet, unit) : { along: 1, across: 1 };
}

/** So many sheets long and wide. */
function sheetsFor({ from, to, left, right }: Frame, sheet: NonNullable<Panel['sheet']>, { perTick }: Unit): Parts {
    const parts = (length: number, longest: number): number =>
        (longest > 0 ? Math.min(MOST_PARTS, Math.max(1, Math.ceil(length / perTick / longest - HAIR))) : 1);
    return { along: parts(to - from, sheet.along), across: parts(right - left, sheet.across) };
}
const HAIR = 1e-6;
/** More sheets than anybody puts over a coffer: a mistyped one must not stop the program. */
const MOST_PARTS = 20;

interface Cell { readonly coffer: number; readonly round: readonly Flank[]; readonly outline: Polygon }

function cellOf(round: readonly Flank[], { gap }: Panel, coffer: number, unit: Unit): Cell {
    const edges = round.map(flank => offset(flank.base, Math.round(standsOff(flank, gap) * unit.perTick)));
    // two walls in line are one edge
    const kept = edges.filter((edge, i) => !isSame(edges.at(i - 1)!, edge));
    return { coffer, round, outline: withoutTwins(kept.flatMap((edge, i) => crossing(kept.at(i - 1)!, edge) ?? []), unit) };
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
function wayFor(cells: readonly Cell[], { ways, sheet }: Panel, unit: Unit): Line {
    const tried = ways.map(way => {
        const line = lineThrough(ORIGIN, way), frames = cells.map(({ outline }) => frameOf(outline, line));
        const sheets = sheet ? frames.reduce((sum, frame) => { const { along, across } = sheetsFor(frame, sheet, unit); return sum + along * across; }, 0) : 0;
        return { line, sheets, reach: frames.reduce((sum, { from, to }) => sum + to - from, 0) };
    });
    return tried.reduce((best, one) => (one.sheets < best.sheets || one.sheets === best.sheets && one.reach > best.reach ? one : best)).line;
}
const ORIGIN: Point = { x: 0, y: 0 };

function piecesOf(cell: Cell, { along, across }: Parts, panel: Panel, way: Line, unit: Unit): Piece[] {
    const whole = frameOf(cell.outline, way);
    const cut = (from: number, to: number, share: number): number => from + (to - from) * share;
    return Array.from({ length: along * across }, (_, nth): Piece[] => {
        const row = Math.floor(nth / along), column = nth % along;
        const slot = {
            from: cut(whole.from, whole.to, column / along), to: cut(whole.from, whole.to, (column + 1) / along),
            left: cut(whole.left, whole.right, row / across), right: cut(whole.left, whole.right, (row + 1) / across),
        };
        const outline = along * across === 1 ? cell.outline : withoutTwins(within(cell.outline, slot, way), unit);
        return outline.length < 3 ? [] : blank(cell, outline, [column > 0, column < along - 1], nth + 1, panel, way, unit);
    }).flat();
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
    { coffer, round, outline: whole }: Cell, outline: Polygon, spliced: readonly [boolean, boolean], nth: number,
    { thickness, gap }: Panel, way: Line, unit: Unit,
): Piece[] {
    const { from, to, left, right } = frameOf(outline, way), { perTick } = unit;
    const edge = (across: number): Stretch => ({ from: pointAt(from, across, way), to: pointAt(to, across, way) });
    const ends = [-1, 1].map(end => facing(round, way, end)), cuts = spliced.map((is): Cut => (is ? 'splice' : 'square'));
    // what two carriers are apart, less what is left open at each
    const isWhole = outline === whole && isRectangle(outline, { from, to, left, right }, perTick);
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

/** It fills the rectangle round it, but for less than a tick along its edges: what is planed off. */
function isRectangle(outline: Polygon, { from, to, left, right }: Frame, perTick: number): boolean {
    const [{ x, y }] = outline as [Point];
    const twice = outline.reduce((sum, a, i) => {
        const b = outline[(i + 1) % outline.length]!;
        return sum + (a.x - x) * (b.y - y) - (b.x - x) * (a.y - y);
    }, 0);
    return Math.abs(twice / 2 - (to - from) * (right - left)) < perTick * (to - from + right - left);
}

function isConvex(outline: Polygon): boolean {
    return outline.every((b, i) => {
        const a = outline.at(i - 1)!, c = outline[(i + 1) % outline.length]!;
        return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) >= 0;
    });
}

/** What of a convex outline lies in a slot. */
function within(outline: Polygon, { from, to, left, right }: Frame, way: Line): Polygon {
    const u = directionOf(way), v = rightOf(way);
    const bounds: [Vector, number, 1 | -1][] = [[u, from, 1], [u, to, -1], [v, left, 1], [v, right, -1]];
    return bounds.reduce<Polygon>((shape, [axis, at, side]) => shape.flatMap((point, i) => {
        const next = shape[(i + 1) % shape.length]!, inside = side * (reach(ORIGIN, point, axis) - at), nextInside = side * (reach(ORIGIN, next, axis) - at);
        const share = inside / (inside - nextInside), crosses = inside > 0 && nextInside < 0 || inside < 0 && nextInside > 0;
        return [...inside >= 0 ? [point] : [], ...crosses ? [{ x: point.x + (next.x - point.x) * share, y: point.y + (next.y - point.y) * share }] : []];
    }), outline);
}
