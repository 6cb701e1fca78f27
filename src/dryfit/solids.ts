import type { Ceiling } from '../ceiling/model.ts';
import { kept } from '../plain/kept.ts';
import type { Piece, TakeOff } from '../takeoff/model.ts';
import { bodyOf, type Body } from './body.ts';
import type { Solid } from './model.ts';
import { planOf, type Plan } from './places.ts';
import { formOf, prismsOf } from './stand.ts';

/** The pieces of the cut list as solids, standing where the layout puts them: see model.ts. */
export function solidsOf(ceiling: Ceiling, takeOff: TakeOff): Solid[] {
    return assembled(planOf(ceiling, takeOff), takeOff.pieces);
}

/** Pieces where they belong, and each that has a place as a body in it. */
export interface Standing { readonly plan: Plan; readonly solids: readonly Solid[]; readonly bodies: readonly Body[] }

/** Whoever looks at a list looks at it twice soon: how it goes together, and how it goes up. */
const MOST_STANDING = 4;

/** The same for all who look at a cut list as it stands, kept by the list. */
export const standingOf: (takeOff: TakeOff, ceiling: Ceiling) => Standing = kept((takeOff: TakeOff, ceiling: Ceiling): Standing => {
    const plan = planOf(ceiling, takeOff), solids = assembled(plan, takeOff.pieces);
    return { plan, solids, bodies: bodiesOf(plan, solids) };
}, MOST_STANDING);

export function bodiesOf({ places }: Plan, solids: readonly Solid[]): Body[] {
    const byId = new Map(places.map(place => [place.id, place]));
    return solids.map(({ piece, prisms }) => bodyOf(piece, byId.get(piece.id)!, prisms));
}

/** What is on the list twice stands there once, and what has no place nowhere. */
function assembled({ places }: Plan, pieces: readonly Piece[]): Solid[] {
    const byId = new Map(places.map(place => [place.id, place]));
    const stood = new Set<string>();
    return pieces.flatMap(piece => {
        const place = byId.get(piece.id);
        if (!place || stood.has(piece.id)) return [];
        stood.add(piece.id);
        return [{ piece, prisms: prismsOf(formOf(piece, place.seat), place.seat) }];
    });
}
