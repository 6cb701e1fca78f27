import type { Ceiling } from '../ceiling/model.ts';
import { keptInSteps } from '../plain/kept.ts';
import { atOnce, eachInSteps, type Steps } from '../plain/steps.ts';
import type { Piece, TakeOff } from '../takeoff/model.ts';
import { bodyOf, type Body } from './body.ts';
import type { Solid } from './model.ts';
import { planOf, type Plan } from './places.ts';
import { formOf, prismsOf } from './stand.ts';

/** The pieces of the cut list as solids, standing where the layout puts them: see model.ts. */
export function solidsOf(ceiling: Ceiling, takeOff: TakeOff): Solid[] {
    return atOnce(assembled(planOf(ceiling, takeOff), takeOff.pieces));
}

/** Pieces where they belong, and each that has a place as a body in it. */
export interface Standing { readonly plan: Plan; readonly solids: readonly Solid[]; readonly bodies: readonly Body[] }

/** Whoever looks at a list looks at it twice soon: how it goes together, and how it goes up. */
const MOST_STANDING = 4;

/** Pieces that are stood up in one step: some tenths of a second on a busy machine. */
const AT_ONCE = 2500;

/** The same for all who look at a cut list as it stands, kept by the list. */
export const standingOf = keptInSteps(function* (takeOff: TakeOff, ceiling: Ceiling): Steps<Standing> {
    const plan = planOf(ceiling, takeOff);
    yield;
    const solids = yield* assembled(plan, takeOff.pieces);
    yield;
    return { plan, solids, bodies: yield* bodiesOf(plan, solids) };
}, MOST_STANDING);

export function bodiesOf({ places }: Plan, solids: readonly Solid[]): Steps<Body[]> {
    const byId = new Map(places.map(place => [place.id, place]));
    return eachInSteps(solids, AT_ONCE, ({ piece, prisms }) => bodyOf(piece, byId.get(piece.id)!, prisms));
}

/** What is on the list twice stands there once, and what has no place nowhere. */
function* assembled({ places }: Plan, pieces: readonly Piece[]): Steps<Solid[]> {
    const byId = new Map(places.map(place => [place.id, place]));
    const stood = new Set<string>();
    const solids = yield* eachInSteps(pieces, AT_ONCE, (piece): Solid[] => {
        const place = byId.get(piece.id);
        if (!place || stood.has(piece.id)) return [];
        stood.add(piece.id);
        return [{ piece, prisms: prismsOf(formOf(piece, place.seat), place.seat) }];
    });
    return solids.flat();
}
