import { solidsOf } from '../dryfit/solids.ts';
import type { Solid } from '../dryfit/model.ts';
import { layoutOf } from '../pipeline/inspect.ts';
import type { Piece } from '../takeoff/model.ts';
import type { PieceChanges, RoomChange, RoomThere } from './model.ts';
import { pairBy } from './pair-by.ts';
import { alikeKey } from './pieces.ts';

/** How a piece that stands in a place where none like it stood comes there, or goes from there: cut alike from elsewhere, cut from an old one, or new. */
export type Comes = 'elsewhere' | 'from' | 'new';

/** A room by its places: what stands where nothing like it stood, and what stood where nothing like it stands. */
interface PlaceChanges {
    readonly come: readonly { readonly piece: Piece; readonly how: Comes }[];
    /** `new` turned round: no longer wanted anywhere. */
    readonly left: readonly { readonly solid: Solid; readonly how: Comes }[];
}

/**
 * What is otherwise in a room to whoever stands in it. Names do not tell: beside a new line all that follow are called otherwise, and stay where they
 * are. So what is alike at the same place is the same, and of the rest it is told where it comes from.
 * @param pieces of the house
 */
export function placeChanges({ before, after }: Pick<RoomChange, 'before' | 'after'>, { same, moved, from, renamed }: PieceChanges): PlaceChanges {
    const there = pairBy(standing(before), standing(after), ({ piece, prisms }) => `${alikeKey(piece, renamed)} ${JSON.stringify(prisms)}`);
    const alike = [...same, ...moved], placed = there.pairs.map(pair => ({ before: pair.before.piece, after: pair.after.piece }));
    const way = (of: 'before' | 'after', to: 'before' | 'after'): ReturnType<typeof followed> => followed(
        new Map(alike.map(pair => [pair[of], pair[to]])), new Map(placed.map(pair => [pair[to], pair[of]])), new Set(from.map(pair => pair[of])),
    );
    const comes = way('after', 'before'), goes = way('before', 'after');
    return {
        come: there.after.map(({ piece }) => ({ piece, how: comes(piece) })),
        left: there.before.map(solid => ({ solid, how: goes(solid.piece) })),
    };
}

function standing(room: RoomThere | undefined): Solid[] {
    const ceiling = room && layoutOf(room.room).ceiling;
    return ceiling && room.takeOff ? solidsOf(ceiling, room.takeOff) : [];
}

/**
 * Pieces are paired by how they are cut: the one that a piece is paired with may stand at the place of a third, which is then looked at in its stead,
 * and so on. Every step is to one that no other piece leads to, so it ends.
 */
function followed(other: ReadonlyMap<Piece, Piece>, inPlace: ReadonlyMap<Piece, Piece>, cut: ReadonlySet<Piece>): (piece: Piece) => Comes {
    return piece => {
        for (let one = piece; ;) {
            const pair = other.get(one);
            if (!pair) return cut.has(one) ? 'from' : 'new';
            const next = inPlace.get(pair);
            if (!next) return 'elsewhere';
            one = next;
        }
    };
}
