import type { Room, WaitSaid } from '../job/model.ts';
import type { OrderSaid } from '../job/put-up.ts';
import { PLURAL, PARTS } from '../job/part.ts';
import type { Ceiling } from '../ceiling/model.ts';
import type { Given } from '../provenance/source.ts';
import { grouped } from '../plain/groups.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import type { Piece } from '../takeoff/model.ts';
import type { Before } from './model.ts';

type Names = ReadonlyMap<string, readonly Piece[]>;

/** Pieces by every name that an order may call them by: their part, their line or wall, their own. */
export function namesOf(pieces: readonly Piece[]): Names {
    const names = new Map<string, readonly Piece[]>();
    for (const part of PARTS) {
        const own = pieces.filter(piece => piece.part === part);
        if (own.length > 0) for (const name of new Set([part, PLURAL[part]])) names.set(name, own);
    }
    for (const [line, own] of grouped(pieces.filter(piece => piece.line !== null), ({ line }) => line!)) names.set(`line-${line}`, own);
    const atWalls = pieces.filter(({ line, part, on }) => line === null && on !== null && part !== 'trim');
    for (const [wall, own] of grouped(atWalls, ({ on }) => on!)) names.set(`wall-${wall}`, own);
    for (const piece of pieces) names.set(nameInRoom(piece), [piece]);
    return names;
}

/** Names in what is said of the order, and of what is up, that nothing in the room has. */
export function unknownNames({ room: { putUp } }: Ceiling, names: Names): Given<string>[] {
    const said = (putUp?.orders ?? []).flatMap(({ what, before, after }) => [...what, ...before ? [before] : [], ...after ? [after] : []]);
    const waiting = (putUp?.waits ?? []).flatMap(({ before }) => before);
    return [...said, ...waiting, ...putUp?.up ?? []].filter(({ value }) => !names.has(value));
}

/** Pieces that are up, as the text says. */
export function piecesUp({ putUp }: Pick<Room, 'putUp'>, pieces: readonly Piece[]): ReadonlySet<Piece> {
    return putUp && putUp.up.length > 0 ? piecesOf(putUp.up.map(({ value }) => value), namesOf(pieces)) : new Set();
}

/** When something may be put up, as the text says: not before this day, and after what others finish. */
export interface Held { readonly notBefore: number | null; readonly waits: readonly WaitSaid[] }
const AT_ONCE: Held = { notBefore: null, waits: [] };

/** Pieces that are held up, by their names in the cut list; and what all of the room waits for, which is not said of each of them. */
export function heldUp({ room: { putUp } }: Ceiling, names: Names): { readonly pieces: ReadonlyMap<string, Held>; readonly begin: Held } {
    const pieces = new Map<string, Held>();
    const hold = (named: readonly Given<string>[], more: Held): void => {
        for (const { id } of piecesOf(named.map(({ value }) => value), names)) pieces.set(id, together([pieces.get(id) ?? AT_ONCE, more]));
    };
    for (const { what, day } of putUp?.orders ?? []) if (day) hold(what, { notBefore: day.value, waits: [] });
    const waits = putUp?.waits ?? [];
    for (const wait of waits) if (wait.before.length > 0) hold(wait.before, heldBy(wait));
    const from: Held = { notBefore: putUp?.fromDay?.value ?? null, waits: [] };
    return { pieces, begin: together([from, ...waits.filter(({ before }) => before.length === 0).map(heldBy)]) };
}

/** What waits for the work of others goes on the day after they are done. */
function heldBy(wait: WaitSaid): Held {
    return { notBefore: wait.kind === 'trade' && wait.untilDay ? wait.untilDay.value + 1 : null, waits: [wait] };
}

/** All of these. */
export function together(held: readonly Held[]): Held {
    const days = held.flatMap(({ notBefore }) => notBefore ?? []);
    return { notBefore: days.length === 0 ? null : Math.max(...days), waits: [...new Set(held.flatMap(({ waits }) => waits))] };
}

/**
 * By it goes up late what waits longest: by the day; last what waits for another room. What waits for somebody of whom nobody knows when he is done goes up
 * after what waits for nobody.
 */
export function latenessOf({ notBefore, waits }: Held): number {
    return waits.some(({ kind }) => kind === 'room') ? Infinity : notBefore ?? (waits.length > 0 ? UNKNOWN_DAY : 0);
}
const UNKNOWN_DAY = 1 / 2;

/**
 * What the text wants before what. Between two things of many pieces stands a knot that is no piece, so that they are not paired each with each: it
 * is there when the first thing is, and the second waits for it. What both things have in common is left out.
 */
export function saidBefore({ room: { putUp } }: Ceiling, names: Names): Before[] {
    return (putUp?.orders ?? []).flatMap((order, i) => [
        ...order.before ? knotted(order, names, [order.what.map(({ value }) => value), [order.before.value]], `order ${i} before`) : [],
        ...order.after ? knotted(order, names, [[order.after.value], order.what.map(({ value }) => value)], `order ${i} after`) : [],
    ]);
}

/** An order that orders nothing: of `all` of its things no piece is left without those that stand on both sides. `at`: the words that it is compared with. */
interface EmptyOrder { readonly at: Given<string>; readonly all: readonly Given<string>[]; readonly pieces: number }

/** Orders of a thing and what is a part of it, as of bottoms and bottoms: nothing waits for anything. Names that nothing has are told apart. */
export function emptyOrders({ room: { putUp } }: Ceiling, names: Names): EmptyOrder[] {
    return (putUp?.orders ?? []).flatMap(({ what, before, after }) => [before, after].flatMap((at): EmptyOrder[] => {
        if (!at || ![...what, at].every(({ value }) => names.has(value))) return [];
        const own = piecesOf(what.map(({ value }) => value), names), other = piecesOf([at.value], names);
        if ([...own].every(piece => other.has(piece))) return [{ at, all: what, pieces: own.size }];
        return [...other].every(piece => own.has(piece)) ? [{ at, all: [at], pieces: other.size }] : [];
    }));
}

function piecesOf(of: readonly string[], names: Names): Set<Piece> {
    return new Set(of.flatMap(name => names.get(name) ?? []));
}

function knotted({ at }: OrderSaid, names: Names, [first, then]: readonly [readonly string[], readonly string[]], knot: string): Before[] {
    const firsts = piecesOf(first, names), thens = piecesOf(then, names);
    const early = [...firsts].filter(piece => !thens.has(piece)), late = [...thens].filter(piece => !firsts.has(piece));
    if (early.length === 0 || late.length === 0) return [];
    const edge = (before: string, after: string): Before => ({ first: before, then: after, why: 'said', at });
    return [...early.map(({ id }) => edge(id, knot)), ...late.map(({ id }) => edge(knot, id))];
}
