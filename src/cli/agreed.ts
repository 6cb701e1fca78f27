import { dirname } from 'node:path';
import { URI } from 'langium';
import { pairHouses } from '../changes/rooms.ts';
import type { House } from '../report/house.ts';
import { agreedCommit } from '../report/invoice/pieces-there.ts';
import { UsageError } from './exit-code.ts';
import { Git } from './git/git.ts';
import { commitOf } from './git/revision.ts';
import { treeOf } from './git/tree.ts';
import { housesOf } from './houses.ts';
import { openTree } from './states.ts';
import type { World } from './world.ts';

/** A house as it was at the commit that its contract to date was agreed for; undefined where none is named, or it cannot be read here. */
export async function asAgreed(house: House, world: World): Promise<House | undefined> {
    const { job: { contract, at } } = house, name = contract && agreedCommit(contract);
    if (name === undefined || !at) return undefined;
    // what cannot be read then changes no figure here: the bill says what it does not count
    const quiet: World = { ...world, terminal: { ...world.terminal, say: () => undefined } };
    try {
        const folder = await world.disk.realpath(dirname(URI.parse(at.uri).fsPath)), git = await Git.at(folder), { commit } = await commitOf(git, name);
        if (commit === undefined) return undefined;
        const { workspace } = await openTree({ asked: name }, await treeOf(git, commit), git, folder, quiet);
        const then = housesOf(await workspace.check({ forHouses: true }), workspace);
        return workspace.problems().length > 0 ? undefined : pairHouses(then, [house]).find(({ after }) => after)?.before;
    } catch (error) {
        if (error instanceof UsageError) return undefined;
        throw error;
    }
}
