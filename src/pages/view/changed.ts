import { placeChanges, type Comes } from '../../changes/places.ts';
import type { Solid } from '../../dryfit/model.ts';
import { sinceOf } from '../changes/content.ts';
import type { ChangesKnown, NoHistory } from '../changes/known.ts';
import type { Since } from '../changes/since.ts';
import type { RoomOnPage } from '../page.ts';
import type { ViewPiece } from './piece.ts';

/** What is otherwise in the room since a commit; or why that is not known. */
export type ChangesInView = { readonly none: NoHistory } | { readonly working: true } | ChangedInView;

export interface ChangedInView extends Since {
    /** The room was not there then: nothing of it is marked. */
    readonly isNew: boolean;
    /** A room is half written: this is how it was before. */
    readonly isBehind: boolean;
    readonly come: readonly { readonly key: string; readonly how: Comes }[];
    /** What stood there: its keys are no keys of pieces, which may be called so now. */
    readonly left: readonly (ViewPiece & { readonly how: Comes })[];
}

/** The key of what stood there. */
function keyOfLeft(id: string): string {
    return `was.${id}`;
}

/** Undefined where nobody looks for it. `pieceOf`: a piece as the view has it. */
export function changesInView({ layout }: RoomOnPage, known: ChangesKnown | undefined, pieceOf: (solid: Solid) => ViewPiece): ChangesInView | undefined {
    if (!known || 'none' in known && known.none === 'not-asked') return undefined;
    if (!('house' in known)) return known;
    const { house, isBehind } = known, { name, at } = layout.room;
    const room = house.rooms.find(({ after }) => after?.room.name === name && after.room.at.uri === at.uri);
    const since = { ...sinceOf(known), isBehind };
    if (!room?.before) return { ...since, isNew: true, come: [], left: [] };
    const { come, left } = placeChanges(room, house.pieces);
    return {
        ...since, isNew: false, come: come.map(({ piece, how }) => ({ key: piece.id, how })),
        left: left.map(({ solid, how }) => { const piece = pieceOf(solid); return { ...piece, key: keyOfLeft(piece.key), how }; }),
    };
}
