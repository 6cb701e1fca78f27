import { assign } from '../cutting/assign.ts';
import { areaOf, becomingKey, canBecome } from '../cutting/become.ts';
import { grouped } from '../plain/groups.ts';
import { cutAlike } from '../takeoff/cut-alike.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import type { Piece } from '../takeoff/model.ts';
import { pairBy, type Paired } from './pair-by.ts';
import type { Pair, PieceChanges, RoomChange, StockNames } from './model.ts';
import { isHalfKnown } from './rooms.ts';

/** The pieces of both states, each once; without those of a room that is laid out in one alone. */
export function pieceChanges(rooms: readonly Pick<RoomChange, 'before' | 'after'>[], renamed: StockNames): PieceChanges {
    const names = new Map<Piece, string>(), before: Piece[] = [], after: Piece[] = [];
    rooms.forEach((room, i) => {
        if (isHalfKnown(room)) return;
        for (const [side, list] of [[room.before, before], [room.after, after]] as const) for (const piece of side?.takeOff?.pieces ?? []) {
            names.set(piece, `${i} ${nameInRoom(piece)}`);
            list.push(piece);
        }
    });
    const same = pairBy(before, after, piece => `${names.get(piece)!} ${alikeKey(piece, renamed)}`);
    const moved = pairBy(same.before, same.after, piece => alikeKey(piece, renamed));
    const from = fromOld(moved.before, moved.after, renamed);
    return { same: same.pairs, moved: moved.pairs, from: from.pairs, fresh: from.after, gone: from.before, proved: from.proved, renamed };
}

/** Of the same wood and part, and cut alike. */
export function alikeKey(piece: Piece, renamed: StockNames): string {
    return `${woodOf(piece, renamed)} ${piece.part} ${cutAlike(piece)}`;
}

/** Boards of one name and section are the same wood in either state, in whatever file they are declared, and where only their name is otherwise. */
export function woodOf({ stock: { name, species } }: Piece, renamed: StockNames): string {
    return `${renamed.stockBefore(name)} ${species?.value ?? ''}`;
}

/** So that the most wood is taken from what is there. */
function fromOld(before: readonly Piece[], after: readonly Piece[], renamed: StockNames): Paired<Piece> & { proved: boolean } {
    const pairs: Pair[] = [], was = grouped(before, piece => woodOf(piece, renamed));
    let proved = true;
    for (const [wood, wanted] of grouped(after, piece => woodOf(piece, renamed))) {
        const old = was.get(wood) ?? [];
        const alike = { row: (i: number) => becomingKey(old[i]!), column: (j: number) => becomingKey(wanted[j]!) };
        const found = assign(old.length, wanted.length, (i, j) => gainOf(old[i]!, wanted[j]!), alike);
        proved &&= found.proved;
        for (const [i, j] of found.pairs) pairs.push({ before: old[i]!, after: wanted[j]! });
    }
    const takenOld = new Set(pairs.map(pair => pair.before)), takenNew = new Set(pairs.map(pair => pair.after));
    return { pairs, proved, before: before.filter(piece => !takenOld.has(piece)), after: after.filter(piece => !takenNew.has(piece)) };
}

/** As much wood as comes out of an old piece; of what takes as much, what stays the same part. */
function gainOf(old: Piece, wanted: Piece): number {
    return canBecome(old, wanted) ? 2 * areaOf(wanted) + Number(old.part === wanted.part) : 0;
}
