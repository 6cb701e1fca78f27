import { dirname } from 'node:path';
import { URI } from 'langium';
import { UsageError } from './exit-code.ts';
import { Git } from './git/git.ts';
import { treeOf } from './git/tree.ts';
import { openTree } from './states.ts';
import type { Workspace } from './workspace.ts';
import type { World } from './world.ts';

/**
 * What is made of the folder of a file as it was at a commit, without a word to anybody; undefined where there is no such commit, or it cannot be read:
 * whoever compares with it tells that.
 * @param commitIn its whole name
 */
export async function quietlyAt<Made>(
    uri: string, commitIn: (git: Git) => Promise<string | undefined>, world: World,
    make: (then: Workspace, paths: readonly string[]) => Promise<Made | undefined>,
): Promise<Made | undefined> {
    const quiet: World = { ...world, terminal: { ...world.terminal, say: () => undefined } };
    try {
        const folder = await world.disk.realpath(dirname(URI.parse(uri).fsPath)), git = await Git.at(folder), commit = await commitIn(git);
        if (commit === undefined) return undefined;
        const { workspace, paths } = await openTree({ asked: commit }, await treeOf(git, commit), git, folder, quiet);
        return await make(workspace, paths);
    } catch (error) {
        if (error instanceof UsageError) return undefined;
        throw error;
    }
}
