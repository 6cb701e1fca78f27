import { biscuitOf, slotDepth } from '../../data/biscuits.ts';
import { NEAR } from '../../dryfit/meetings.ts';
import type { Block } from '../../dryfit/block.ts';
import { TICKS_PER_INCH, type Ticks } from '../../quantity/ticks.ts';
import type { Closing } from '../../takeoff/closing/pieces.ts';
import type { Way } from '../../takeoff/closing/ways.ts';
import type { Stood } from '../stood.ts';
import { plansOf, type Plan } from './moves.ts';
import { frameOf, type Frame } from './pose.ts';
import { runsInto, type Fast, type Part, type Passage } from './sweep.ts';

/** What a piece may meet on its way: pieces that are up, with what it may be in each of them by plan, and the walls. */
interface Met { readonly blocks: readonly Block[]; readonly allowed: Ticks }

/** As much as the edges of a joint give, or are eased, where one is pressed past the other: what passes for a closed joint. Common practice, no source. */
const GIVES = TICKS_PER_INCH / 64;
/** So near the biscuits' figures, which are those of small angles, come to the true ones. */
const HAIR = TICKS_PER_INCH / 256;
/** As long are the parts at the ends, which come near to others; what is between them is far off. */
const END = TICKS_PER_INCH;
/** Parts of what is bent: an outline of so many is off by less than a tick's tolerance. */
const PARTS = 12;

/** How a closing piece gets to its place among `met` by this way in; undefined where it does not. */
export function planIn(piece: Stood, closing: Closing, way: Way, met: readonly Met[]): Plan | undefined {
    const outline = piece.blocks.flatMap(({ prism }) => prism.outline.map(([x, y]) => ({ x, y })));
    const frame = frameOf(piece.piece, outline, piece.top, piece.foot);
    const slices = met.flatMap(({ blocks, allowed }) => blocks.flatMap(block => slicesOf(piece, block, frame, allowed + piece.push + GIVES)));
    return plansOf(way, closing, frame).find(plan => gets(plan, { closing, frame, slices }));
}

/** A cut along a piece and through what stands beside it: from where to where each of them is there. */
interface Slice { readonly own: readonly [from: number, to: number]; readonly fast: Fast; readonly allowed: number }

/**
 * Where a piece turns about the level across it, each cut along it stays in its plane. So the cuts through the corners of both outlines tell all:
 * between two corners edges are straight.
 */
function slicesOf({ blocks }: Stood, block: Block, frame: Frame, allowed: number): Slice[] {
    return blocks.flatMap(own => {
        const [low, high] = spread(own, frame), [least, most] = spread(block, frame);
        const from = Math.max(low, least) + allowed, to = Math.min(high, most) - allowed;
        if (from >= to || block.foot <= own.top) return [];
        const between = [...corners(own, frame), ...corners(block, frame)].map(([, off]) => off).filter(off => off > from && off < to);
        return [...new Set([from, ...between, to])].map((off): Slice => {
            const at = reach(own, off, frame), [start, end] = reach(block, off, frame);
            return { own: at, fast: { from: start, to: end, top: block.top - frame.top, foot: block.foot - frame.top }, allowed };
        });
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

interface Scene { readonly closing: Closing; readonly frame: Frame; readonly slices: readonly Slice[] }

function gets(plan: Plan, { closing, frame, slices }: Scene): boolean {
    const clear = slices.every(({ own, fast, allowed }) => bodyOf(plan, own, frame).every(part => !anyInto(part, plan, frame, fast, allowed)));
    return clear && halvesApart(plan, frame) && pastBiscuits(plan, closing, frame);
}

function anyInto(part: Part, { moves }: Plan, frame: Frame, fast: Fast, allowed: number): boolean {
    return moves.some(move => runsInto(part, passage(move, frame), fast, allowed));
}
function passage(move: Plan['moves'][number], frame: Frame): Passage {
    return { move, bar: frame };
}

/** The whole piece in one cut, in parts; where it is eased the upper edge is taken back. */
function bodyOf({ moves: [{ to: { shape, low } }], eased }: Plan, [from, to]: readonly [number, number], { length, thickness }: Frame): Part[] {
    const row = (places: readonly number[], [first, last]: readonly [number, number]): Part[] => places.slice(1).map((next, i): Part => {
        const start = places[i]!, upper = [start + (i === 0 ? first : 0), next - (i === places.length - 2 ? last : 0)] as const;
        return [[upper[0], 0], [upper[1], 0], [next, thickness], [start, thickness]];
    });
    if (shape === 'straight' || shape === 'leaning') return row([from, from + END, to - END, to], shape === 'leaning' && low === 0 ? [eased, 0] : [0, shape === 'leaning' ? eased : 0]);
    if (shape === 'kneed') return [...row([from, from + END, length / 2], [0, eased / 2]), ...row([length / 2 + BEYOND, to - END, to], [eased / 2, 0])];
    return row(Array.from({ length: PARTS + 1 }, (_, i) => from + (to - from) * i / PARTS), [0, 0]);
}
/** So far beyond the middle a place belongs to the other half. */
const BEYOND = 1e-3;

/** Two halves that hang where they meet are alike, so they keep out of each other where each keeps to its side of the middle. */
function halvesApart(plan: Plan, frame: Frame): boolean {
    if (plan.moves[0].to.shape !== 'kneed') return true;
    const middle = frame.length / 2, fast: Fast = { from: middle, to: frame.length, top: -frame.length, foot: frame.length };
    const first = bodyOf(plan, [0, frame.length], frame).filter(([corner]) => corner![0] < middle);
    return first.every(part => !plan.moves.slice(1).some(move => runsInto(part, passage(move, frame), fast, GIVES)));
}

/**
 * The ends of the piece where its slots are, against the biscuits that stand out of what it comes to. A slot is as deep as that size wants it, as thick as the
 * biscuit, and `wider` towards the back of the piece.
 */
function pastBiscuits(plan: Plan, { ends, biscuits }: Closing, frame: Frame): boolean {
    const biscuit = biscuits && biscuitOf(biscuits.size), { length, thickness } = frame;
    if (!biscuit) return false;
    const [upper, lower] = [(thickness - biscuit.thickness) / 2, (thickness + biscuit.thickness) / 2], deep = slotDepth(biscuit);
    return ends.every(({ sticksOut }, i) => {
        if (!plan.biscuits[i]) return true;
        const at = (along: number): number => (i === 0 ? along : length - along);
        const part = (from: number, to: number, top: number, foot: number): Part => {
            const [start, end] = [at(from), at(to)].sort((a, b) => a - b) as [number, number];
            return [[start, top], [end, top], [end, foot], [start, foot]];
        };
        const [from, to] = i === 0 ? [-END, sticksOut] : [length - sticksOut, length + END];
        const fast: Fast = { from, to, top: upper, foot: lower };
        const lips = [...plan.open ? [] : [part(0, deep, 0, upper - plan.wider)], part(0, deep, lower, thickness), part(deep, END + deep, 0, thickness)];
        return lips.every(lip => !anyInto(lip, plan, frame, fast, HAIR));
    });
}

/** What stands near: pieces that are up, and the walls. */
export function metBy(others: readonly Stood[], walls: readonly Block[]): Met[] {
    return [...others.map(({ blocks, push }) => ({ blocks, allowed: push })), { blocks: walls, allowed: NEAR }];
}
