import { pairHouses } from '../changes/rooms.ts';
import type { House } from '../report/house.ts';
import { agreedCommits, isByPieces, type Agreed } from '../report/invoice/pieces-there.ts';
import { commitOf } from './git/revision.ts';
import { housesOf } from './houses.ts';
import { quietlyAt } from './quietly-at.ts';
import type { World } from './world.ts';

/**
 * A house as it was at each commit that something was agreed for, where something is billed by its pieces; without those that cannot be read here: that
 * changes no figure, and the bill says what it does not count.
 */
export async function asAgreed(house: House, world: World): Promise<Agreed[]> {
    const { job: { contract, at } } = house, all: Agreed[] = [];
    if (!contract || !at || !isByPieces(contract)) return [];
    for (const name of agreedCommits(contract)) {
        const then = await quietlyAt(at.uri, async git => (await commitOf(git, name)).commit, world, async workspace => {
            const houses = housesOf(await workspace.check({ forHouses: true }), workspace);
            return workspace.problems().length > 0 ? undefined : pairHouses(houses, [house]).find(({ after }) => after)?.before;
        });
        if (then) all.push({ commit: name, rooms: then.rooms });
    }
    return all;
}
