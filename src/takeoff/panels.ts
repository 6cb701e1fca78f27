import type { Point, Vector } from '../plane/point.ts';
import { sidesOf } from '../ceiling/flanks.ts';
import { roundDown, roundTo } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Source } from '../provenance/source.ts';
import { term } from '../provenance/why.ts';
import { placeAlong, type Lie, type Pair } from './lie.ts';
import type { Piece } from './model.ts';
import { pieceOf } from './piece.ts';
import { endsOf, type Setting } from './setting.ts';

/** Panels between the ceiling and the beams, coffer by coffer. */
export function panelPieces(setting: Setting): Piece[] {
    return setting.pairs.of('panel', 'panel').flatMap(pair => panelOf(pair, setting));
}

function panelOf({ exact, cut, named }: Pair, setting: Setting): Piece[] {
    const { step, ceiling } = setting, back = ceiling.beams!.profile.back!, thickness = back.thickness!.value.ticks;
    const { shape } = cut.strip, over = `over coffer ${exact.strip.coffers[0]}`;
    const runs = Math.abs(exact.way.x) >= Math.abs(exact.way.y) ? 'east-west' : 'north-south';
    return pieceOf({
        part: 'panel', ...named, stock: back.stock, back: exact.back, cutBack: shape ? blankOf(cut.back, step) : cut.back, ends: exact.ends, meets: exact.meets,
        width: shape ? blankOf(cut.strip.width, step) : roundDown(cut.strip.width, step), thickness,
        work: [shape && { kind: 'shape', corners: shapeOf(cut, step), from: [endsOf(runs)[0], sidesOf(runs)[0]] }],
        where: named.nth === null ? over : `${over}, piece ${named.nth}`, source: back.at,
        why: whyOf(exact, back.at, setting), corners: exact.corners, heights: [0 - thickness, 0],
        ...exact.strip.shape && { outline: exact.strip.shape.map(({ x, y }) => ({ x: Math.round(x) + 0, y: Math.round(y) + 0 })) },
    }, setting);
}

/** From what it meets at one end to what it meets at the other, less what is left open; of what comes in several, or is no rectangle, its own length. */
function whyOf({ strip: { why }, back, meets }: Lie, at: Source, setting: Setting): Piece['why']['terms'] {
    const left = (of: string): string => `left open at ${setting.isWall(of) ? `the ${of} wall` : `line ${of}`}`;
    const open = why.flatMap(({ what, of, ticks }) => (what === 'end' ? [term(left(of), -1, Math.round(0 - ticks), at)] : []));
    const from = meets.map(of => (setting.isWall(of!) ? `the ${of} wall` : `the middle of line ${of}`)), length = open.reduce((sum, { ticks }) => sum + ticks, Math.round(back));
    return [open.length === 0 ? term('from edge to edge', 1, length, at) : term(`from ${from[0]} to ${from[1]}`, 1, length, at), ...open];
}

/** The rectangle that a panel is cut to its shape from is no smaller than it. */
export function blankOf(length: number, step: Ticks): Ticks {
    return Math.ceil(Math.round(length) / step) * step;
}

/** The corners of a panel that is no rectangle, from its first end and its back, at the marks of the tape nearest to them. */
export function shapeOf({ strip: { shape }, way, corners: [back] }: Lie, step: Ticks): [Ticks, Ticks][] {
    const across = { x: 0 - way.y, y: way.x }, mark = (length: number): Ticks => roundTo(Math.round(length), step) + 0;
    const from = (axis: Vector, point: Point): number => placeAlong(axis, point) - placeAlong(axis, back);
    return shape!.map((point): [Ticks, Ticks] => [mark(from(way, point)), mark(Math.abs(from(across, point)))]);
}
