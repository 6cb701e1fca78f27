import { dirname } from 'node:path';
import { URI } from 'langium';
import { pairHouses } from '../changes/rooms.ts';
import { compareFindings, type Finding } from '../findings/finding.ts';
import { askGit, NoAnswer } from '../git/ask.ts';
import { namedCommits, type NamedCommit } from '../git/commits.ts';
import { commitNamesIn, isNearSigned, NEAR_SIGNED, type CommitThere, type Price } from '../job/commits.ts';
import type { Signed } from '../job/contract.ts';
import type { JobSettings, Room } from '../job/model.ts';
import { keyOfJob } from '../pages/rooms.ts';
import { price, wholePrice } from '../pipeline/price.ts';
import { roughPlan } from '../pipeline/price-plans.ts';
import { grouped } from '../plain/groups.ts';
import { runCommitRules } from '../rules/run-commits.ts';
import { housesOf, isSound } from './houses.ts';
import { quietlyAt } from './quietly-at.ts';
import { asThere } from './states.ts';
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
    const commits = await named(dirname(URI.parse(uri).fsPath), names), name = contract?.signed?.commit?.value;
    const known = name === undefined ? undefined : commits.get(name);
    const then = known && 'hash' in known ? await priceThen({ signed: contract!.signed!, uri, hash: known.hash }, checked, workspace, world) : undefined;
    return runCommitRules(content, then ? new Map<string, CommitThere>([...commits, [name!, { ...known!, price: then }]]) : commits);
}

async function named(folder: string, names: readonly string[]): Promise<Map<string, NamedCommit>> {
    try {
        return await namedCommits(words => askGit(folder, words), names);
    } catch (error) {
        if (error instanceof NoAnswer) return new Map();
        throw error;
    }
}

/** What was signed by the contract in a file, and the whole name of the commit. */
interface Wanted { readonly signed: Signed; readonly uri: string; readonly hash: string }

/** A commit never changes. */
const kept = new WeakMap<Workspace, Map<string, Promise<Price | undefined>>>();

function priceThen(wanted: Wanted, checked: readonly Checked[], workspace: Workspace, world: World): Promise<Price | undefined> {
    const { signed: { sum, currency }, uri, hash } = wanted, own = kept.get(workspace) ?? new Map<string, Promise<Price | undefined>>();
    const key = `${hash} ${sum.value.toFraction()} ${currency} ${uri}`, known = own.get(key) ?? reckoned(wanted, checked, workspace, world);
    kept.set(workspace, own.set(key, known));
    return known;
}

/** What is near enough on rough plans of boards is so on better ones: they differ by some hundredths of what boards cost, and most of a price is work. */
const ROUGHLY_NEAR = NEAR_SIGNED / 2;

/**
 * What the house of a job came to at a commit, on a first plan of its boards; undefined where it was not there, or not all of it has its price; and
 * where it is near what was signed, which is told by a rough plan: nothing has to be said then, and that is nearly always so.
 */
function reckoned({ signed, uri, hash }: Wanted, checked: readonly Checked[], workspace: Workspace, world: World): Promise<Price | undefined> {
    return quietlyAt(uri, async () => hash, world, async (then, paths) => {
        const now = { checked: new Map(checked.map(one => [one.content.uri, one])), workspace };
        const same = (at: string): Checked | undefined => asThere(at, now, then);
        const rooms = paths.map(path => URI.file(path).toString()).flatMap(at => (same(at)?.content ?? then.contentOf(at))?.rooms ?? []);
        const house = pairHouses(byJob(rooms), byJob(checked.flatMap(({ content }) => content.rooms))).find(({ after }) => after?.job.at?.uri === uri)?.before;
        if (!house) return undefined;
        const own = house.rooms.map(({ room }) => room), roughly = wholePrice(price(own, house.job, roughPlan(own, house.job)));
        if (!roughly || isNearSigned(signed, roughly, ROUGHLY_NEAR) !== false) return undefined;
        const told = housesOf(await then.check({ forHouses: true, known: same }), then).find(({ job }) => keyOfJob(job) === keyOfJob(house.job));
        return told && isSound([told]) ? wholePrice(price(own, house.job)) : undefined;
    });
}

function byJob(rooms: readonly Room[]): { readonly job: JobSettings; readonly rooms: readonly { readonly room: Room }[] }[] {
    return [...grouped(rooms, ({ job }) => keyOfJob(job))].map(([, own]) => ({ job: own[0]!.job, rooms: own.map(room => ({ room })) }));
}
