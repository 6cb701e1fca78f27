import { dirname, resolve } from 'node:path';
import { URI } from 'langium';
import type { HouseThere } from '../changes/model.ts';
import { pairHouses } from '../changes/rooms.ts';
import { compareFindings, type Finding } from '../findings/finding.ts';
import { askGit, NoAnswer } from '../git/ask.ts';
import { namedCommits, type NamedCommit } from '../git/commits.ts';
import { commitNamesIn, type Commits, type CommitThere } from '../job/commits.ts';
import { price, wholePrice } from '../pipeline/price.ts';
import { runCommitRules } from '../rules/run-commits.ts';
import { UsageError } from './exit-code.ts';
import { Git } from './git/git.ts';
import { revisionOf } from './git/revision.ts';
import { treeOf } from './git/tree.ts';
import { housesOf } from './houses.ts';
import { readTree } from './states.ts';
import type { Checked, Workspace } from './workspace.ts';
import type { World } from './world.ts';

/** The files with what is wrong with the commits that their contracts name. Where git cannot be asked nothing is added. */
export async function withCommitFindings(checked: readonly Checked[], workspace: Workspace, world: World): Promise<Checked[]> {
    const all: Checked[] = [];
    for (const one of checked) {
        const found = await findingsIn(one, checked, workspace, world);
        all.push(found.length === 0 ? one : { ...one, findings: [...one.findings, ...found].sort(compareFindings) });
    }
    return all;
}

async function findingsIn({ content }: Checked, checked: readonly Checked[], workspace: Workspace, world: World): Promise<Finding[]> {
    const { job: { contract }, uri } = content, names = commitNamesIn(content);
    if (names.length === 0) return [];
    const folder = dirname(URI.parse(uri).fsPath), commits: Commits = await named(folder, names);
    const signed = contract?.signed?.commit?.value, known = signed === undefined ? undefined : commits.get(signed);
    if (signed !== undefined && known && 'hash' in known) {
        const then = await priceThen((known as NamedCommit & { hash: string }).hash, uri, checked, workspace, world);
        if (then) return runCommitRules(content, new Map([...commits, [signed, { ...known, price: then }]]));
    }
    return runCommitRules(content, commits);
}

async function named(folder: string, names: readonly string[]): Promise<Map<string, NamedCommit>> {
    try {
        return await namedCommits(words => askGit(folder, words), names);
    } catch (error) {
        if (error instanceof NoAnswer) return new Map();
        throw error;
    }
}

type Price = CommitThere['price'];
/** A commit never changes. */
const kept = new WeakMap<Workspace, Map<string, Promise<Price>>>();

function priceThen(hash: string, uri: string, checked: readonly Checked[], workspace: Workspace, world: World): Promise<Price> {
    const own = kept.get(workspace) ?? new Map<string, Promise<Price>>(), key = `${hash} ${uri}`, known = own.get(key) ?? reckoned(hash, uri, checked, workspace, world);
    kept.set(workspace, own.set(key, known));
    return known;
}

/** What the house of a job came to at a commit, on a first plan of its boards; undefined where it was not there, or not all of it has its price. */
async function reckoned(hash: string, uri: string, checked: readonly Checked[], workspace: Workspace, world: World): Promise<Price> {
    const quiet: World = { ...world, terminal: { ...world.terminal, say: () => undefined } };
    try {
        const folder = await world.disk.realpath(dirname(URI.parse(uri).fsPath)), git = await Git.at(folder), revision = await revisionOf(git, hash);
        const now = { checked: new Map(checked.map(one => [one.content.uri, one])), workspace };
        const { read } = await readTree(revision, await treeOf(git, hash), git, resolve(folder), quiet, { known: now, closely: false });
        const pair = pairHouses<Pick<HouseThere, 'job' | 'rooms'>>(read.state.houses, housesOf(checked, workspace)).find(({ after }) => after?.job.at?.uri === uri), house = pair?.before;
        if (!house || !read.isSound) return undefined;
        return wholePrice(price(house.rooms.map(({ room }) => room), house.job));
    } catch (error) {
        // what cannot be read then is told by whoever compares with it
        if (error instanceof UsageError) return undefined;
        throw error;
    }
}
