import { biscuitOf, slotDepth } from '../../data/biscuits.ts';
import { TICKS_PER_INCH } from '../../quantity/ticks.ts';
import type { Closing } from '../../takeoff/closing/pieces.ts';
import type { Way } from '../../takeoff/closing/ways.ts';
import type { Stood } from '../stood.ts';
import { plansOf, type Plan } from './moves.ts';
import type { Frame } from './pose.ts';
import { frameIn, GIVES, slicesOf, type Met, type Slice } from './slices.ts';
import { runsInto, type Fast, type Part, type Passage } from './sweep.ts';

/** So near the biscuits' figures, which are those of small angles, come to the true ones. */
const HAIR = TICKS_PER_INCH / 256;
/** As long are the parts at the ends, which come near to others; what is between them is far off. */
const END = TICKS_PER_INCH;
/** Parts of what is bent: an outline of so many is off by less than a tick's tolerance. */
const PARTS = 12;

/** How a closing piece gets to its place among `met` by this way in; undefined where it does not. */
export function planIn(piece: Stood, closing: Closing, way: Way, met: readonly Met[]): Plan | undefined {
    const frame = frameIn(piece), slices = slicesOf(piece, frame, met);
    return plansOf(way, closing, frame).find(plan => gets(plan, { closing, frame, slices }));
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
