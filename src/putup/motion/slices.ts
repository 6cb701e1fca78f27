import type { Block } from '../../dryfit/block.ts';
import { NEAR } from '../../dryfit/meetings.ts';
import { TICKS_PER_INCH, type Ticks } from '../../quantity/ticks.ts';
import type { Stood } from '../stood.ts';
import { frameOf, type Frame } from './pose.ts';
import type { Fast } from './sweep.ts';

/** What a piece may meet on its way: pieces that are up, with what it may be in each of them by plan, and the walls. */
export interface Met { readonly blocks: readonly Block[]; readonly allowed: Ticks }

/** Pieces that are up. */
export function metBy(others: readonly Stood[]): Met[] {
    return others.map(({ blocks, push }) => ({ blocks, allowed: push }));
}
export function wallsMet(walls: readonly Block[]): Met {
    return { blocks: walls, allowed: NEAR };
}

/** As much as the edges of a joint give, or are eased, where one is pressed past the other: what passes for a closed joint. Common practice, no source. */
export const GIVES = TICKS_PER_INCH / 64;

/** A piece as it lies. */
export function frameIn({ piece, blocks, top, foot }: Stood): Frame {
    return frameOf(piece, blocks.flatMap(({ prism }) => prism.outline.map(([x, y]) => ({ x, y }))), top, foot);
}

/** A cut along a piece and through what stands beside it: from where to where each of them is there. */
export interface Slice { readonly own: readonly [from: number, to: number]; readonly fast: Fast; readonly allowed: number }

/**
 * Where a piece turns about the level across it, each cut along it stays in its plane. So the cuts through the corners of both outlines tell all:
 * between two corners edges are straight.
 */
export function slicesOf({ blocks, push }: Stood, frame: Frame, met: readonly Met[]): Slice[] {
    return met.flatMap(other => other.blocks.flatMap(block => blocks.flatMap(own => slicesOfTwo(own, block, frame, other.allowed + push + GIVES))));
}

function slicesOfTwo(own: Block, block: Block, frame: Frame, allowed: number): Slice[] {
    const [low, high] = spread(own, frame), [least, most] = spread(block, frame);
    const from = Math.max(low, least) + allowed, to = Math.min(high, most) - allowed;
    if (from >= to || block.foot <= own.top) return [];
    const between = [...corners(own, frame), ...corners(block, frame)].map(([, off]) => off).filter(off => off > from && off < to);
    return [...new Set([from, ...between, to])].map((off): Slice => {
        const at = reach(own, off, frame), [start, end] = reach(block, off, frame);
        return { own: at, fast: { from: start, to: end, top: block.top - frame.top, foot: block.foot - frame.top }, allowed };
    });
}

/** Corners of an outline: how far along the piece, and across. */
function corners({ prism: { outline } }: Block, { way, start }: Frame): (readonly [along: number, off: number])[] {
    return outline.map(([x, y]) => [x * way.x + y * way.y - start, y * way.x - x * way.y] as const);
}
function spread(block: Block, frame: Frame): readonly [number, number] {
    const off = corners(block, frame).map(([, across]) => across);
    return [Math.min(...off), Math.max(...off)];
}
/** From where to where along the piece an outline reaches in one cut. */
function reach(block: Block, off: number, frame: Frame): readonly [number, number] {
    const all = corners(block, frame), found: number[] = [];
    all.forEach(([along, across], i) => {
        const [next, nextAcross] = all[(i + 1) % all.length]!;
        if ((across < off && nextAcross < off) || (across > off && nextAcross > off)) return;
        if (across === nextAcross) found.push(along, next); else found.push(along + (next - along) * (off - across) / (nextAcross - across));
    });
    return [Math.min(...found), Math.max(...found)];
}
