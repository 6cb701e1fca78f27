import { relative, resolve, sep } from 'node:path';
import { changesOf } from '../changes/changes.ts';
import type { HouseThere, State } from '../changes/model.ts';
import type { BoardPlan } from '../cutting/model.ts';
import { compareFindings } from '../findings/finding.ts';
import type { JobSettings } from '../job/model.ts';
import { statedFiles } from '../language/stated-files.ts';
import { MOST_FILES } from '../language/workspace/most-files.ts';
import { saysTheSame } from '../language/workspace/same-behind.ts';
import { price } from '../pipeline/price.ts';
import { pricePlans } from '../pipeline/price-plans.ts';
import type { Compared, StateTold } from '../report/changes/state.ts';
import type { Files } from '../report/look.ts';
import { EXIT, UsageError, worst, type ExitCode } from './exit-code.ts';
import { emptyFolder, findFiles, isPassedOver, isWithin } from './find-files.ts';
import { Git } from './git/git.ts';
import { leftOut, revisionOf, unmerged, type Revision } from './git/revision.ts';
import { SIGNED, signedRevision } from './git/signed.ts';
import { Snapshot } from './git/snapshot.ts';
import { treeOf, type Tree } from './git/tree.ts';
import { foundBehind, housesOf, isSound } from './houses.ts';
import { once } from './input.ts';
import { LOOKING, solveBy } from './prove.ts';
import { reasonOf } from './read-text.ts';
import { Workspace, type Checked } from './workspace.ts';
import type { World } from './world.ts';

export interface StatesAsked {
    /** Commits, tags or branches: the last commit, and the files as they lie, where nothing is said. Either may be the one that was signed. */
    readonly from?: string; readonly to?: string;
    /** The file or folder that is looked at: the current folder where nothing is said. */
    readonly in: string;
    readonly quick: boolean;
}

/** Two states of the houses of a folder and what changed between them. Both are read out of git's store, without a checkout. */
export async function compareStates(asked: StatesAsked, world: World): Promise<{ compared: Compared; files: Files; isSound: boolean; code: ExitCode }> {
    const { before, after, files, code } = await once('states', world, heard => statesOf(asked, heard)), solve = solveBy(asked, world);
    world.terminal.progress(LOOKING);
    const states: State[] = [];
    for (const { state } of [before, after]) states.push({ files: state.files, houses: await priced(state.houses, solve) });
    world.terminal.progress('');
    const compared = { before: before.told, after: after.told, changes: changesOf(states[0]!, states[1]!) };
    return { compared, files, isSound: before.isSound && after.isSound, code };
}

interface Read {
    readonly state: Omit<State, 'houses'> & { readonly houses: readonly Omit<HouseThere, 'priced'>[] };
    readonly told: StateTold;
    readonly isSound: boolean;
}

async function statesOf({ from = 'HEAD', to, in: name }: StatesAsked, world: World): Promise<{ before: Read; after: Read; files: Files; code: ExitCode }> {
    const { path, folder } = await placeOf(name, world), git = await Git.at(folder);
    const revision = async (asked?: string): Promise<Revision | undefined> => (asked === undefined || asked === SIGNED ? undefined : revisionOf(git, asked));
    const old = await revision(from), now = await revision(to);
    // git tells the folder as the system does, and this is how its files are named below
    const here = { ...world, cwd: await world.disk.realpath(world.cwd) };
    const treeAt = async (at: Revision, known?: Known): Promise<Opened> => readTree(at, await treeOf(git, at.commit), git, path, here, known);
    if (to === undefined) await mustBeAsItLies(git, path, world);
    // what was signed stands in the contract of the other state; where that one has none yet, or is the signed one too, in that of the files as they lie
    const [before, after] = to === SIGNED ? await untilSigned(old, git, treeAt, path, here) : await fromSigned(old, now, git, treeAt, path, here);
    if (before.files + after.files === 0) throw new UsageError(`There is no job file in ${name}, neither in ${from} nor in ${to ?? 'the files as they lie'}`);
    return { before: before.read, after: after.read, files: after.names, code: worst(before.code, after.code) };
}

type TreeAt = (at: Revision, known?: Known) => Promise<Opened>;

/** `old`: undefined where it is the one that was signed; `now`: where it is the files as they lie. */
async function fromSigned(
    old: Revision | undefined, now: Revision | undefined, git: Git, treeAt: TreeAt, path: string, world: World,
): Promise<[Opened, Opened]> {
    const after = now ? await treeAt(now) : await readFiles(path, world);
    return [await treeAt(old ?? await signedRevision(git, jobsIn(after)), after), after];
}

/** `old`: undefined where both are the one that was signed. */
async function untilSigned(old: Revision | undefined, git: Git, treeAt: TreeAt, path: string, world: World): Promise<[Opened, Opened]> {
    const before = old && await treeAt(old), isSaid = before !== undefined && jobsIn(before).some(({ contract }) => contract?.signed?.commit);
    const signed = await signedRevision(git, jobsIn(isSaid ? before : await readFiles(path, world)));
    const after = await treeAt(signed, before);
    return [before ?? after, after];
}

function jobsIn({ read }: Opened): JobSettings[] {
    return read.state.houses.map(({ job }) => job);
}

/** The path that was asked for, as the system tells it, and the nearest folder that is there: what is looked at may be gone by now. */
async function placeOf(name: string, { cwd, disk }: World): Promise<{ path: string; folder: string }> {
    const asked = resolve(cwd, name);
    let folder = asked, below = '';
    for (;;) {
        try {
            const real = await disk.realpath(folder), isFolder = (await disk.stat(real)).isDirectory();
            return { path: resolve(real, below), folder: isFolder ? real : resolve(real, '..') };
        } catch (error) {
            const above = resolve(folder, '..');
            if (above === folder) throw new UsageError(`${name} ${reasonOf(error)}`);
            below = below === '' ? relative(above, folder) : `${relative(above, folder)}${sep}${below}`;
            folder = above;
        }
    }
}

/** Throws a UsageError where what lies there is not what is worked on. */
async function mustBeAsItLies(git: Git, path: string, { disk }: World): Promise<void> {
    const isOurs = (way: string): boolean => way.endsWith('.coffer') && isWithin(resolve(git.top, way), path);
    const open = (await unmerged(git)).filter(isOurs), left: string[] = [];
    for (const way of (await leftOut(git)).filter(isOurs)) if (!await disk.stat(resolve(git.top, way)).then(() => true, () => false)) left.push(way);
    if (open.length > 0) throw new UsageError(`A merge is not finished here, and both sides stand in ${open.join(', ')}: finish it first, or name two commits`);
    if (left.length > 0) throw new UsageError(`Not all files are checked out here (git sparse-checkout), and ${left.length > 3 ? `${left.length} job files` : left.join(', ')} would count as gone: check them out, choose a folder with --in, or name two commits`);
}

interface Known { readonly checked: ReadonlyMap<string, Checked>; readonly workspace: Workspace }
interface Opened extends Known { readonly read: Read; readonly code: ExitCode; readonly files: number; readonly names: Files }

/** A state that is committed. */
async function readTree(revision: Revision, tree: Tree, git: Git, path: string, world: World, known?: Known): Promise<Opened> {
    const { workspace, paths } = await openTree(revision, tree, git, path, world), { asked, commit: hash, date, subject } = revision;
    tree.notes.forEach(words => { world.terminal.say(`in ${asked}: ${words}`); });
    return readState(workspace, paths, { name: asked, commit: { hash, date, subject } }, `in ${asked}: `, world, known);
}

/** A state that is committed as a workspace, with the files in it that are looked at; each is parsed and linked, and nothing is worked out yet. */
export async function openTree(
    revision: Pick<Revision, 'asked'>, tree: Tree, git: Git, path: string, world: World,
): Promise<{ readonly workspace: Workspace; readonly paths: readonly string[] }> {
    const inside = [...tree.texts.keys(), ...tree.problems.keys()].filter(way => isLookedAt(way, git.top, path)).map(way => resolve(git.top, way)).sort();
    if (inside.length > MOST_FILES) throw new UsageError(`There are ${inside.length} job files in ${revision.asked}; ${MOST_FILES} are the most that are read at once: name a folder with --in`);
    const workspace = await Workspace.open(world, [path], new Snapshot(world.disk, git.top, tree));
    await workspace.add(inside);
    return { workspace, paths: inside };
}

/** As a folder is read. */
function isLookedAt(way: string, top: string, path: string): boolean {
    const full = resolve(top, way);
    return full === path || isWithin(full, path) && !relative(path, full).split(sep).slice(0, -1).some(isPassedOver);
}

/** The files as they lie. */
async function readFiles(path: string, world: World): Promise<Opened> {
    const isThere = await world.disk.stat(path).then(() => true, () => false);
    const found = isThere ? await findFiles([path], world.cwd, world.disk) : { files: [], folders: [], problems: [], notes: [] };
    // that all of a house is gone is a change; what is there and cannot be had is told
    const problems = found.problems.filter(words => words !== emptyFolder(path));
    [...problems, ...found.notes].forEach(words => { world.terminal.say(words); });
    const workspace = await Workspace.open(world, found.folders);
    await workspace.add(found.files);
    const opened = await readState(workspace, found.files, { name: 'the files as they lie' }, '', world);
    return problems.length > 0 ? { ...opened, code: EXIT.usage } : opened;
}

/** @param known what is known of another state: what says the same in both is not worked out twice */
async function readState(
    workspace: Workspace, paths: readonly string[], told: Omit<StateTold, 'rooms'>, where: string, { terminal }: World, known?: Known,
): Promise<Opened> {
    const checked = await workspace.check({
        closely: true, forHouses: true, ...known && { known: uri => asThere(uri, known, workspace) },
    }), problems = workspace.problems();
    problems.forEach(words => { terminal.say(`${where}${words}`); });
    const houses = housesOf(checked, workspace);
    const state = {
        files: statedFiles(checked.map(({ document }) => document), workspace.services.shared.workspace.Tables, uri => workspace.files.nameOf(uri)),
        houses: houses.map(({ job, rooms }) => ({ job, rooms, findings: findingsBehind(rooms.map(({ room }) => room.at.uri), checked, workspace) })),
    };
    return {
        read: { state, told: { ...told, rooms: houses.flatMap(({ rooms }) => rooms) }, isSound: isSound(houses) },
        code: problems.length > 0 ? EXIT.usage : EXIT.clean, files: paths.length, names: workspace.files,
        checked: new Map(checked.map(one => [one.content.uri, one])), workspace,
    };
}

/** What is known of a file of the other state, where it and all that it is made from say the same in both. */
export function asThere(uri: string, { checked, workspace: old }: Known, workspace: Workspace): Checked | undefined {
    return saysTheSame(uri, old.texts, workspace.texts) ? checked.get(uri) : undefined;
}

function findingsBehind(uris: readonly string[], checked: readonly Checked[], workspace: Workspace): HouseThere['findings'] {
    return [...new Set([...new Set(uris)].flatMap(uri => foundBehind(uri, checked, workspace)))].sort(compareFindings);
}

/** Each house as if nothing were cut; what one takes of the boards on hand is gone for the next. */
async function priced(houses: Read['state']['houses'], solve: ReturnType<typeof solveBy>): Promise<HouseThere[]> {
    const before: BoardPlan[] = [], all: HouseThere[] = [];
    for (const house of houses) {
        const rooms = house.rooms.map(({ room }) => room), { plan } = await pricePlans(rooms, [], house.job, before, solve);
        before.push(plan);
        all.push({ ...house, priced: price(rooms, house.job, plan) });
    }
    return all;
}
