import { pairRooms } from '../../changes/rooms.ts';
import { cutAlready, cutNotCounted } from '../../cutting/as-cut.ts';
import type { Contract, KnownBy } from '../../job/contract.ts';
import { namesOf, piecesUp } from '../../putup/said.ts';
import type { Given } from '../../provenance/source.ts';
import { Rational } from '../../quantity/rational.ts';
import { nameInRoom } from '../../takeoff/ids.ts';
import type { Piece } from '../../takeoff/model.ts';
import type { House, RoomPieces } from '../house.ts';

/** How many pieces there are, and how many of them are cut, or up. */
export interface PiecesDone {
    readonly all: number;
    readonly done: number;
    /** Recorded as cut, or as up, and none of these, or none as it was cut, so that it counts for nothing. */
    readonly notCounted: ReadonlySet<Given<string>>;
    /** The commit whose cut list was counted, where that is another than the present one. */
    readonly commit?: string;
}

/** A house as it was at a commit that something was agreed for. */
export interface Agreed { readonly commit: string; readonly rooms: House['rooms'] }

/** The commits of what was agreed, the first first: of what was signed, and of each change that was accepted. */
export function agreedCommits({ signed, changes }: Contract): string[] {
    return [...new Set([signed, ...changes].flatMap(line => line?.commit?.value ?? []))];
}

/** Whether something of the contract is billed by pieces: then the house is asked for as it was agreed. */
export function isByPieces({ phases }: Contract): boolean {
    return phases.some(({ knownBy }) => knownBy !== undefined);
}

/**
 * How much is done of what was agreed. What an owner has changed takes nothing from what was done for the contract, and has its own line in the bill, with
 * its own share: so it is counted by the cut list of each state that was agreed, and the largest share holds. It cannot fall when another change is
 * accepted. The present cut list is one of them while nobody says what was agreed last, or that cannot be read. Undefined where a room is not laid out, or
 * has pieces left out; and where there are none.
 */
export function piecesDone(house: Pick<House, 'rooms'>, by: KnownBy, contract: Contract, agreed: readonly Agreed[]): PiecesDone | undefined {
    const now = counted(by, house.rooms.map(room => ({ lists: [room], now: room })));
    const then = agreed.flatMap(state => byAgreed(by, state, house) ?? []), last = [contract.signed, ...contract.changes].at(-1)?.commit?.value;
    const isLastKnown = last !== undefined && then.some(({ commit }) => commit === last);
    const all = now && !isLastKnown ? [now, ...then] : then.length > 0 ? then : now ? [now] : [], [first] = all;
    if (!first || !now) return undefined;
    const best = all.reduce((most, one) => (shareOf(one).gt(shareOf(most)) ? one : most), first);
    return shareOf(best).equals(shareOf(now)) && now.notCounted.size <= best.notCounted.size ? now : best;
}

export function shareOf({ done, all }: PiecesDone): Rational {
    return new Rational(done, all);
}

/** A piece is done where it is so as the list that was agreed has it, or as the present one has it; of a room that is gone since, what it said then counts. */
function byAgreed(by: KnownBy, { commit, rooms: then }: Agreed, { rooms }: Pick<House, 'rooms'>): PiecesDone | undefined {
    const there = counted(by, pairRooms(then, rooms).flatMap(({ before, after }) => {
        const now = after && rooms.find(({ room }) => room === after.room);
        return before ? [{ lists: now ? [before, now] : [before], now: now ?? before }] : [];
    }));
    return there && { ...there, commit };
}

/** The first list is the one whose pieces are counted, by what `now` says is cut and up. */
interface ToCount { readonly lists: readonly Pick<RoomPieces, 'takeOff'>[]; readonly now: Pick<RoomPieces, 'room'> }

function counted(by: KnownBy, rooms: readonly ToCount[]): PiecesDone | undefined {
    let all = 0, done = 0;
    const notCounted = new Set<Given<string>>();
    for (const { lists: [own, ...others], now: { room } } of rooms) {
        if (!own?.takeOff || own.takeOff.leftOut.length > 0) return undefined;
        const lists = [own, ...others].map(({ takeOff }) => takeOff?.pieces ?? []), names = new Set(lists[0]!.map(nameInRoom));
        const are = (pieces: readonly Piece[]): Iterable<Piece> => (by === 'cut' ? cutAlready(room, pieces) : piecesUp(room, pieces));
        all += names.size;
        done += new Set(lists.flatMap(pieces => [...are(pieces)].map(nameInRoom)).filter(name => names.has(name))).size;
        const [first, ...more] = lists.map(pieces => (by === 'cut' ? cutNotCounted(room, pieces) : upNotCounted(room, pieces)));
        for (const name of first!) if (more.every(set => set.has(name))) notCounted.add(name);
    }
    return all === 0 ? undefined : { all, done, notCounted };
}

/** What is said to be up, and is called so by nothing in a cut list. */
function upNotCounted({ putUp }: RoomPieces['room'], pieces: readonly Piece[]): ReadonlySet<Given<string>> {
    const names = putUp && putUp.up.length > 0 ? namesOf(pieces) : undefined;
    return new Set(names ? putUp!.up.filter(({ value }) => !names.has(value)) : []);
}
