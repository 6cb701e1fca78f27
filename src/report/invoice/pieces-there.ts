import { pairRooms } from '../../changes/rooms.ts';
import { cutAlready, cutNotCounted } from '../../cutting/as-cut.ts';
import type { Contract, KnownBy } from '../../job/contract.ts';
import type { CutName } from '../../job/model.ts';
import { piecesUp } from '../../putup/said.ts';
import { nameInRoom } from '../../takeoff/ids.ts';
import type { Piece } from '../../takeoff/model.ts';
import type { House, RoomPieces } from '../house.ts';

/** How many pieces there are, and how many of them are cut, and up. */
export interface PiecesThere extends Readonly<Record<KnownBy | 'all', number>> {
    /** Recorded as cut, and none of these as they were cut, so that they count for nothing. */
    readonly notCounted: ReadonlySet<CutName>;
    /** The commit whose cut list was counted, where that is another than the present one. */
    readonly by?: string;
}

/** The commit of what was agreed last: of the last change that was accepted, or of what was signed; undefined where nobody says it. */
export function agreedCommit({ signed, changes }: Contract): string | undefined {
    return (changes.length > 0 ? changes.at(-1)!.commit : signed?.commit)?.value;
}

/** Of the present cut list. Undefined where a room is not laid out, or has pieces left out; and where there are none. */
export function piecesThere({ rooms }: Pick<House, 'rooms'>): PiecesThere | undefined {
    return counted(rooms.map(now => ({ lists: [now], now })));
}

/**
 * Of the cut list of what was agreed. An owner who has the ceiling changed takes nothing from what was done for the contract: a piece is cut where it was cut
 * as that list has it, or as the present one has it; of a room that is gone since, what it said then counts.
 */
export function piecesOfAgreed(agreed: Pick<House, 'rooms'>, { rooms }: Pick<House, 'rooms'>, by: string): PiecesThere | undefined {
    const there = counted(pairRooms(agreed.rooms, rooms).flatMap(({ before, after }) => {
        const now = after && rooms.find(({ room }) => room === after.room);
        return before ? [{ lists: now ? [before, now] : [before], now: now ?? before }] : [];
    }));
    return there && { ...there, by };
}

/** The first list is the one whose pieces are counted, by what `now` says is cut and up. */
interface ToCount { readonly lists: readonly Pick<RoomPieces, 'takeOff'>[]; readonly now: Pick<RoomPieces, 'room'> }

function counted(rooms: readonly ToCount[]): PiecesThere | undefined {
    let all = 0, cut = 0, up = 0;
    const notCounted = new Set<CutName>();
    for (const { lists: [own, ...others], now: { room } } of rooms) {
        if (!own?.takeOff || own.takeOff.leftOut.length > 0) return undefined;
        const lists = [own, ...others].map(({ takeOff }) => takeOff?.pieces ?? []), names = new Set(lists[0]!.map(nameInRoom));
        const done = (of: (pieces: readonly Piece[]) => ReadonlySet<Piece>): number => (
            new Set(lists.flatMap(pieces => [...of(pieces)].map(nameInRoom)).filter(name => names.has(name))).size);
        all += names.size;
        cut += done(pieces => cutAlready(room, pieces));
        up += done(pieces => piecesUp(room, pieces));
        const [first, ...more] = lists.map(pieces => cutNotCounted(room, pieces));
        for (const name of first!) if (more.every(set => set.has(name))) notCounted.add(name);
    }
    return all === 0 ? undefined : { all, cut, 'put-up': up, notCounted };
}
