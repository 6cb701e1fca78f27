import type { Ceiling } from '../ceiling/model.ts';
import type { Piece, TakeOff } from '../takeoff/model.ts';
import type { Solid } from './model.ts';
import { planOf, type Plan } from './places.ts';
import { formOf, prismsOf } from './stand.ts';

/** The pieces of the cut list as solids, standing where the layout puts them: see model.ts. */
export function solidsOf(ceiling: Ceiling, takeOff: TakeOff): Solid[] {
    return assembled(planOf(ceiling, takeOff), takeOff.pieces);
}

/** What is on the list twice stands there once, and what has no place nowhere. */
export function assembled({ places }: Plan, pieces: readonly Piece[]): Solid[] {
    const byId = new Map(places.map(place => [place.id, place]));
    const stood = new Set<string>();
    return pieces.flatMap(piece => {
        const place = byId.get(piece.id);
        if (!place || stood.has(piece.id)) return [];
        stood.add(piece.id);
        return [{ piece, prisms: prismsOf(formOf(piece, place.seat), place.seat) }];
    });
}
