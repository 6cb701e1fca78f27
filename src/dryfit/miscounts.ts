import type { Part, Piece, TakeOff } from '../takeoff/model.ts';
import type { Miscount } from './model.ts';
import type { Plan } from './places.ts';
import { missingSpacers } from './spacers.ts';
import { prismsOf } from './stand.ts';
import { grouped } from '../plain/groups.ts';

/** Places without a piece (unless it is left out, which is told elsewhere), pieces on the list more than once, pieces without a place; of one part together. */
export function miscounts({ ceiling, places }: Plan, takeOff: TakeOff): Miscount[] {
    const count = new Map<string, number>();
    for (const { id } of takeOff.pieces) count.set(id, (count.get(id) ?? 0) + 1);
    const placed = new Set(places.map(place => place.id));
    const leftOut = new Set(takeOff.leftOut.map(({ id }) => id));
    const ofPart = (part: Part): Piece | undefined => takeOff.pieces.find(piece => piece.part === part);
    const missing = [
        ...places.filter(({ id }) => !count.has(id)).map(({ id, part, form, seat }) => ({ id, part, noRoom: prismsOf(form, seat).length === 0 })),
        ...missingSpacers(ceiling, takeOff).map(id => ({ id, part: 'spacer' as const, noRoom: false })),
    ].filter(({ id }) => !leftOut.has(id));
    const doubled = [...count].filter(([, times]) => times > 1).map(([id, times]) => ({ times, piece: takeOff.pieces.find(piece => piece.id === id)! }));
    return [
        ...[...grouped(missing, one => `${one.part} ${one.noRoom}`).values()].map(([one, ...rest]): Miscount => ({ kind: 'missing', id: one!.id, part: one!.part, piece: ofPart(one!.part), count: 0, noRoom: one!.noRoom, alike: rest.map(({ id }) => id) })),
        ...doubled.map(({ piece, times }): Miscount => ({ kind: 'doubled', id: piece.id, part: piece.part, piece, count: times, noRoom: false, alike: [] })),
        ...takeOff.pieces.filter(({ id }) => !placed.has(id)).map((piece): Miscount => ({ kind: 'no-place', id: piece.id, part: piece.part, piece, count: 1, noRoom: false, alike: [] })),
    ];
}
