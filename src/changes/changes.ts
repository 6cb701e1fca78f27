import { compare } from '../estimate/compare.ts';
import type { Finding } from '../findings/finding.ts';
import { cutChange } from './cut.ts';
import type { Changes, HouseChange, HouseThere, State } from './model.ts';
import { pairBy } from './pair-by.ts';
import { pieceChanges } from './pieces.ts';
import { changePrice } from './price.ts';
import { Renamed } from './renamed.ts';
import { isHalfKnown, pairHouses, pairRooms, roomChange } from './rooms.ts';
import { saidChanges } from './said.ts';

/** What changed in meaning from one state of some houses to another. */
export function changesOf(before: State, after: State): Changes {
    const houses = pairHouses(before.houses, after.houses).map(pair => ({ ...pair, pairs: pairRooms(pair.before?.rooms ?? [], pair.after?.rooms ?? []) }));
    const renamed = new Renamed(before.files, after.files, houses.flatMap(({ pairs }) => pairs));
    return { said: saidChanges(before.files, after.files, renamed), houses: houses.map(house => houseChange(house, renamed)) };
}

interface HousePair { readonly before?: HouseThere; readonly after?: HouseThere; readonly pairs: ReturnType<typeof pairRooms> }

function houseChange({ before, after, pairs }: HousePair, renamed: Renamed): HouseChange {
    const rooms = pairs.map(roomChange), cut = cutChange(rooms, (after ?? before)!.job, renamed);
    // with a room in one of two totals alone their difference is the price of no change
    const both = before && after && !rooms.some(isHalfKnown) ? { before, after } : undefined;
    const price = both && changePrice(both.before, both.after, rooms, cut.wood);
    return {
        ...before && { before }, ...after && { after }, rooms, pieces: pieceChanges(rooms, renamed), cut,
        ...both && { comparison: compare(both.before.priced, both.after.priced) }, ...price && { price },
        findings: findingChanges(before?.findings ?? [], after?.findings ?? [], new Map(rooms.map(({ name, renamedFrom }) => [name, renamedFrom ?? name]))),
    };
}

/**
 * A finding is the same where its words are: it may stand at another line, and a figure in it may be another. One that is allowed in one state is open
 * in the other.
 * @param was what rooms were called before, by their names now
 */
function findingChanges(before: readonly Finding[], after: readonly Finding[], was: ReadonlyMap<string, string>): HouseChange['findings'] {
    const rooms = new Map([...before.map(one => [one, one.room] as const), ...after.map(one => [one, was.get(one.room ?? '') ?? one.room] as const)]);
    const keyOf = (one: Finding, message: string): string => JSON.stringify([one.rule, one.severity, message, rooms.get(one) ?? '', Boolean(one.allowed)]);
    // those with the same figures first, so that of several alike none is paired with another one's
    const same = pairBy(before, after, one => keyOf(one, one.message));
    const { before: gone, after: come } = pairBy(same.before, same.after, one => keyOf(one, one.message.replace(FIGURES, '#')));
    return { come, gone };
}

/** A length, a count, a sum in the words of a finding; not the number in a name, `side-1-2-east`. */
const FIGURES = /(?<![\w-])[~$]?\d[\d,.]*(?:['"%]|\b(?!-))(?: \d+(?:\/\d+)?"?)*(?:\/\d+"?)?/g;
