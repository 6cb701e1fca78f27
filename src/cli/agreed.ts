import { pairHouses } from '../changes/rooms.ts';
import type { House } from '../report/house.ts';
import { agreedCommit } from '../report/invoice/pieces-there.ts';
import { commitOf } from './git/revision.ts';
import { housesOf } from './houses.ts';
import { quietlyAt } from './quietly-at.ts';
import type { World } from './world.ts';

/**
 * A house as it was at the commit that its contract to date was agreed for; undefined where none is named, or it cannot be read here: that changes no figure,
 * and the bill says what it does not count.
 */
export async function asAgreed(house: House, world: World): Promise<House | undefined> {
    const { job: { contract, at } } = house, name = contract && agreedCommit(contract);
    if (name === undefined || !at) return undefined;
    return quietlyAt(at.uri, async git => (await commitOf(git, name)).commit, world, async then => {
        const houses = housesOf(await then.check({ forHouses: true }), then);
        return then.problems().length > 0 ? undefined : pairHouses(houses, [house]).find(({ after }) => after)?.before;
    });
}
