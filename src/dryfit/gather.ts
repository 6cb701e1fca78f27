import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import type { Body } from './body.ts';
import { causesOf, lacksHand } from './causes.ts';
import type { Wrong } from './meetings.ts';
import type { Cause, Clash, Misfit } from './model.ts';
import { atKey } from '../plain/at-key.ts';

/**
 * Puts what is wrong between pairs together by the piece they have in common: first those of which a line of the list itself
 * is off, then those with most wrong. Pieces of one part that are off in the same way become one.
 */
export function misfits(wrongs: readonly Wrong[], step: Ticks): Misfit[] {
    const causes = new Map<Body, readonly Cause[]>();
    const open = new Map<Body, Set<Wrong>>();
    for (const wrong of wrongs) {
        for (const body of [wrong.a, wrong.b]) {
            if (!body.place || typeof body.is === 'string') continue;
            if (!causes.has(body)) causes.set(body, causesOf(body.is, body.place, step));
            atKey(open, body, () => new Set()).add(wrong);
        }
    }
    const found: Misfit[] = [];
    for (const body of [...open.keys()].sort((a, b) => compare(a, b, open))) {
        const mine = [...open.get(body)!];
        if (mine.length === 0) continue;
        for (const wrong of mine) open.get(wrong.a === body ? wrong.b : wrong.a)?.delete(wrong);
        add(found, { kind: 'misfit', piece: body.is as Piece, causes: causes.get(body)!, clashes: mine.map(wrong => clashOf(wrong, body)), alike: [] });
    }
    return found;
}

/** Pieces that would fit, if it were said which way round they are cut. */
export function handless(bodies: readonly Body[], told: readonly Misfit[]): Misfit[] {
    const known = new Set(told.flatMap(({ piece, alike }) => [piece, ...alike]));
    const found: Misfit[] = [];
    for (const { is } of bodies) {
        if (typeof is !== 'string' && lacksHand(is) && !known.has(is)) add(found, { kind: 'misfit', piece: is, causes: [{ what: 'hand', is: null }], clashes: [], alike: [] });
    }
    return found;
}

function compare(a: Body, b: Body, open: ReadonlyMap<Body, ReadonlySet<Wrong>>): number {
    const [idA, idB] = [(a.is as Piece).id, (b.is as Piece).id];
    return Number(a.asPlanned) - Number(b.asPlanned) || open.get(b)!.size - open.get(a)!.size || (idA < idB ? -1 : 1);
}

function clashOf({ a, b, kind, ticks, touches, wanted }: Wrong, body: Body): Clash {
    const other = (a === body ? b : a).is;
    return { kind, other, ticks, ...touches !== undefined && { touches }, ...wanted !== undefined && { wanted } };
}

/** Off in the same way: the same causes, and as bad. */
function add(found: Misfit[], one: Misfit): void {
    const key = keyOf(one);
    const same = found.findIndex(other => keyOf(other) === key);
    if (same < 0) found.push(one);
    else found[same] = { ...found[same]!, alike: [...found[same]!.alike, one.piece] };
}

function keyOf({ piece, causes, clashes }: Misfit): string {
    const off = causes.map(cause => 'wanted' in cause && 'is' in cause ? `${cause.what} ${cause.is - cause.wanted}` : cause.what);
    const worst = [...new Set(clashes.map(({ kind, ticks, other }) => `${kind} ${Math.round(ticks)} ${typeof other === 'string' ? other : other.part}`))].sort();
    const { uri, range } = piece.source;
    return JSON.stringify([piece.part, uri, range.start, off, off.length > 0 ? '' : worst]);
}
