import type { Statement } from '../job/statement.ts';
import { grouped } from '../plain/groups.ts';
import { compareTexts } from '../plain/order.ts';
import type { SaidChange, StatedFile } from './model.ts';
import { pairBy } from './pair-by.ts';
import type { Renamed } from './renamed.ts';

/** `within` and `what` as the state before calls them: by these both states are held against each other. */
interface Placed { readonly file: string; readonly within: readonly string[]; readonly what: string; readonly statement: Statement }
interface File extends StatedFile { readonly placed: readonly Placed[] }
type Names = Pick<Renamed, 'withinBefore' | 'whatBefore'>;

/**
 * What is said in one state only, or otherwise in the other, in the order of the files. A statement is known by the blocks it stands in and by what
 * it says something of, not by its line: what is moved within its block, or with its block to another file, is the same. Of what may be said several
 * times (readings, boards that were cut) those that say the same are the same. A block that is called otherwise is the same, and its head says so.
 */
export function saidChanges(before: readonly StatedFile[], after: readonly StatedFile[], renamed: Names = NOTHING_RENAMED): SaidChange[] {
    const olds = placedIn(besideIn(before, after), NOTHING_RENAMED), nows = placedIn(besideIn(after, before), renamed);
    const free = onceInBoth(olds, nows), movedFrom = movedFiles(olds, nows, free), placed = ({ placed: all }: File): readonly Placed[] => all;
    const was = grouped(olds.flatMap(placed), keyBy(free)), is = grouped(nows.flatMap(placed), keyBy(free, movedFrom));
    const changes: SaidChange[] = [];
    for (const key of new Set([...is.keys(), ...was.keys()])) {
        const { before: old, after: now } = pairBy(was.get(key) ?? [], is.get(key) ?? [], markOf);
        for (let i = 0; i < Math.max(old.length, now.length); i++) changes.push(changeOf(old[i], now[i]));
    }
    return changes.sort((a, b) => compareTexts(a.file, b.file) || lineOf(a) - lineOf(b));
}

/** Without tables that the other state has not: that another one is named is told where it is named, and its rows say nothing more. */
function besideIn(files: readonly StatedFile[], others: readonly StatedFile[]): StatedFile[] {
    const names = new Set(others.map(({ name }) => name));
    return files.filter(({ name, isTable }) => !isTable || names.has(name));
}

const NOTHING_RENAMED: Names = { withinBefore: ({ within }) => within, whatBefore: ({ what }) => what };

function placedIn(files: readonly StatedFile[], renamed: Names): File[] {
    const placed = (file: string, statement: Statement): Placed => (
        { file, within: renamed.withinBefore(statement), what: renamed.whatBefore(statement), statement });
    return files.map(file => ({ ...file, placed: file.statements.map(statement => placed(file.name, statement)) }));
}

/** A head says its name too. */
function markOf({ statement: { within, what, mark } }: Placed): string {
    return what === '' ? `${within[0]} ${mark}` : mark;
}

/** Blocks that stand once in either state: they are known by their name, in whatever file. What has no name (a job, labor, imports) belongs to its file. */
function onceInBoth(before: readonly File[], after: readonly File[]): ReadonlySet<string> {
    const once = (files: readonly File[]): Set<string> => {
        const all = files.flatMap(({ placed }) => [...new Set(placed.flatMap(blockOf))]);
        return new Set([...grouped(all, block => block)].filter(([, found]) => found.length === 1).map(([block]) => block));
    };
    const was = once(before);
    return new Set([...once(after)].filter(block => was.has(block)));
}

function blockOf({ within: [block] }: Pick<Placed, 'within'>): string[] {
    return block?.includes(' ') ? [block] : [];
}

/**
 * Files that are moved or renamed, by what they are called now: those of one state alone that hold a block which the other has in a file that is
 * gone. What has no name of its own (imports, a job) went with it.
 */
function movedFiles(before: readonly File[], after: readonly File[], free: ReadonlySet<string>): ReadonlyMap<string, string> {
    const namesOf = (files: readonly File[]): Set<string> => new Set(files.map(({ name }) => name)), was = namesOf(before), is = namesOf(after);
    const homeOf = new Map(before.filter(({ name }) => !is.has(name)).flatMap(({ name, placed }) => (
        placed.flatMap(blockOf).filter(block => free.has(block)).map(block => [block, name] as const))));
    const moved = new Map<string, string>(), taken = new Set<string>();
    for (const { name, placed } of after) {
        const from = was.has(name) ? undefined : placed.flatMap(blockOf).map(block => homeOf.get(block)).find(home => home !== undefined);
        if (from === undefined || taken.has(from)) continue;
        taken.add(from);
        moved.set(name, from);
    }
    return moved;
}

function keyBy(free: ReadonlySet<string>, movedFrom: ReadonlyMap<string, string> = new Map()): (one: Placed) => string {
    return one => {
        const { file, within, what } = one, [block] = blockOf(one);
        return JSON.stringify([block !== undefined && free.has(block) ? '' : movedFrom.get(file) ?? file, within, what]);
    };
}

function changeOf(before: Placed | undefined, after: Placed | undefined): SaidChange {
    const { file, statement: { within, what } } = (after ?? before)!;
    const head = before?.statement.within[0], isRenamed = before && after && what === '' && within.length === 1 && head !== within[0];
    return {
        file, ...before && after && before.file !== file && { movedFrom: before.file }, ...isRenamed && { renamedFrom: head! }, what: [...within, ...what === '' ? [] : [what]],
        ...before && { before: before.statement }, ...after && { after: after.statement },
    };
}

function lineOf({ before, after }: SaidChange): number {
    return (after ?? before)!.at.range.start.line;
}
