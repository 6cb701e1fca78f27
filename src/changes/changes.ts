import { compare } from '../estimate/compare.ts';
import type { Finding } from '../findings/finding.ts';
import { cutChange } from './cut.ts';
import type { Changes, HouseChange, HouseThere, State } from './model.ts';
import { pairBy } from './pair-by.ts';
import { pieceChanges } from './pieces.ts';
import { changePrice } from './price.ts';
import { isHalfKnown, pairHouses, pairRooms, roomChange } from './rooms.ts';
import { saidChanges } from './said.ts';

/** What changed in meaning from one state of some houses to another. */
export function changesOf(before: State, after: State): Changes {
    return { said: saidChanges(before.files, after.files), houses: pairHouses(before.houses, after.houses).map(houseChange) };
}

function houseChange({ before, after }: { readonly before?: HouseThere; readonly after?: HouseThere }): HouseChange {
    const rooms = pairRooms(before?.rooms ?? [], after?.rooms ?? []).map(roomChange);
    const cut = cutChange(rooms, (after ?? before)!.job);
    // with a room in one of two totals alone their difference is the price of no change
    const both = before && after && !rooms.some(isHalfKnown) ? { before, after } : undefined;
    const price = both && changePrice(both.before, both.after, rooms, cut.wood);
    return {
        ...before && { before }, ...after && { after }, rooms, pieces: pieceChanges(rooms), cut,
        ...both && { comparison: compare(both.before.priced, both.after.priced) }, ...price && { price },
        findings: findingChanges(before?.findings ?? [], after?.findings ?? []),
    };
}


/** A finding is the same where its words are: it may stand at another line. One that is allowed in one state is open in the other. */
function findingChanges(before: readonly Finding[], after: readonly Finding[]): HouseChange['findings'] {
    const { before: gone, after: come } = pairBy(before, after, keyOf);
    return { come, gone };
}

function keyOf({ rule, severity, message, room, allowed }: Finding): string {
    return JSON.stringify([rule, severity, message, room ?? '', Boolean(allowed)]);
}
