import type { Ceiling } from '../ceiling/model.ts';
import { separation, type Block } from '../dryfit/block.ts';
import { TICKS_PER_INCH } from '../quantity/ticks.ts';
import type { Steps } from '../plain/steps.ts';
import type { BottomOrder } from '../takeoff/closing/bottoms.ts';
import { runsInOrder } from '../takeoff/closing/pieces.ts';
import type { Part, Piece, TakeOff } from '../takeoff/model.ts';
import type { Before, Reason } from './model.ts';
import type { Nearby } from './nearby.ts';
import { clash, lifted, RIGHT_UNDER, type Stood } from './stood.ts';

/** What may be fastened to each part. Common practice, no source. */
const CARRIES: Readonly<Record<Part, readonly Part[]>> = {
    panel: ['trim'], blocking: ['spacer', 'side', 'cleat', 'bottom'], spacer: ['side'], side: ['cleat', 'bottom', 'molding', 'trim'], cleat: ['bottom'], bottom: ['molding'],
    timber: ['trim'], molding: [], band: ['trim'], trim: [],
};
/** What is fitted to the face of what it ends at; cleats and blocking stand clear of it. */
const FITTED: readonly Part[] = ['side', 'bottom', 'timber', 'molding'];
const FACES: readonly Part[] = ['side', 'timber'];
/** So near two pieces are fastened to each other: a bench-built box stands a little off its blocking. */
const TOUCH = TICKS_PER_INCH / 4;

/** Pieces that are looked at in one step: some tenths of a second on a busy machine. */
const AT_ONCE = 2000;

/**
 * What has to be there before what, each pair once and with one reason: from how the pieces stand to each other, and from the joints of the take-off.
 * A piece that would hang in the way of another one's straight lift has to wait for it.
 */
export function* beforesOf(all: readonly Stood[], nearby: Nearby<Stood>, { joints }: TakeOff, { around }: Ceiling): Steps<Before[]> {
    const found = new Map<string, Before>();
    const add = (first: Piece, then: Piece, why: Reason): void => {
        const key = `${first.id} ${then.id}`;
        if (!found.has(key)) found.set(key, { first: first.id, then: then.id, why });
    };
    const byId = new Map(all.map(one => [one.piece.id, one.piece]));
    for (const { kind, biscuits, pieces: [butting, passing] } of joints) {
        const first = byId.get(passing), then = byId.get(butting);
        if (kind === 'butt' && first && then) add(first, then, biscuits ? 'runs-through' : 'custom');
    }
    const order = new Map(all.map((one, i) => [one, i]));
    for (const [i, one] of all.entries()) {
        if (i % AT_ONCE === AT_ONCE - 1) yield;
        const way = lifted(one, RIGHT_UNDER);
        for (const other of [...touching(one, nearby)].sort((a, b) => order.get(a)! - order.get(b)!)) {
            if (other === one) continue;
            const touches = apart(one, other) <= TOUCH;
            if (touches && carries(one.piece, other.piece)) add(one.piece, other.piece, 'carries');
            if (touches && endsAt(other.piece, one.piece)) add(one.piece, other.piece, 'ends-at');
            if (touches && other.piece.part === 'band' && one.piece.part !== 'band' && one.piece.part !== 'trim' && around[other.piece.on ?? '']) add(one.piece, other.piece, 'last');
            if (hangsInTheWay(one, way, other)) add(one.piece, other.piece, 'in-the-way');
        }
    }
    return [...found.values()];
}

/**
 * Of runs that are spliced with biscuits, which piece waits for which: from both ends of a run towards the one that goes up last, since it has room to be
 * pushed back or gets in most easily.
 */
export function splicedBefores(ceiling: Ceiling, { pieces }: TakeOff, order: BottomOrder): Before[] {
    return runsInOrder(ceiling, pieces, order).flatMap(({ run, last }) => {
        const to = run.indexOf(last), hasBiscuits = run.some(({ ends }) => ends.some(({ kind, sticksOut }) => kind === 'splice' && sticksOut > 0));
        return hasBiscuits ? run.flatMap(({ piece: { id } }, i): Before[] => (i === to ? [] : [{ first: id, then: run[i < to ? i + 1 : i - 1]!.piece.id, why: 'spliced' }])) : [];
    });
}

function touching({ box: { west, east, north, south } }: Stood, nearby: Nearby<Stood>): Set<Stood> {
    return nearby.within({ west: west - TOUCH, east: east + TOUCH, north: north - TOUCH, south: south + TOUCH });
}

/** How far two pieces are apart, in ticks; less than nothing where they are in each other. */
function apart({ blocks }: Stood, { blocks: others }: Stood): number {
    return Math.min(...blocks.flatMap(one => others.map(other => separation(one, other))));
}

/** A cleat, and a molding, are held by their own side: at a corner they touch others too. */
function carries(piece: Piece, other: Piece): boolean {
    if (!CARRIES[piece.part].includes(other.part)) return false;
    return piece.part !== 'side' || other.part !== 'cleat' && other.part !== 'molding' || piece.line === other.line && piece.bay === other.bay && piece.on === other.on;
}

/** Whether `piece` ends at the face of `other`, and is cut to it. */
function endsAt(piece: Piece, other: Piece): boolean {
    if (piece.part === 'trim') return other.part === 'trim' && other.coffer === piece.coffer && isCoped(piece) && !isCoped(other);
    if (!FITTED.includes(piece.part) || !FACES.includes(other.part)) return false;
    return piece.ends.some(({ how }, i) => (how === 'dies' || how === 'butt') && (other.line ?? other.on) === piece.meets[i]);
}

function isCoped({ ends }: Piece): boolean {
    return ends.some(({ how }) => how === 'coped');
}

/** Whether `one` could no longer be lifted straight to its place, along `way`, once `other` is up. */
function hangsInTheWay(one: Stood, way: readonly Block[], other: Stood): boolean {
    if (other.foot <= one.top) return false;
    const allowed = one.push + other.push;
    return clash(way, other.blocks, allowed) && !clash(one.blocks, other.blocks, allowed);
}
