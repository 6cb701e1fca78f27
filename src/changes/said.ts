import type { Statement } from '../job/statement.ts';
import { grouped } from '../plain/groups.ts';
import { compareTexts } from '../plain/order.ts';
import type { SaidChange, StatedFile } from './model.ts';
import { pairBy } from './pair-by.ts';

interface Placed { readonly file: string; readonly statement: Statement }

/**
 * What is said in one state only, or otherwise in the other, in the order of the files. A statement is known by the blocks it stands in and by what
 * it says something of, not by its line: what is moved within its block, or with its block to another file, is the same. Of what may be said several
 * times (readings, boards that were cut) those that say the same are the same.
 */
export function saidChanges(before: readonly StatedFile[], after: readonly StatedFile[]): SaidChange[] {
    const [olds, nows] = [besideIn(before, after), besideIn(after, before)];
    const free = onceInBoth(olds, nows), movedFrom = movedFiles(olds, nows, free);
    const was = grouped(placed(olds), keyBy(free)), is = grouped(placed(nows), keyBy(free, movedFrom));
    const changes: SaidChange[] = [];
    for (const key of new Set([...is.keys(), ...was.keys()])) {
        const { before: old, after: now } = pairBy(was.get(key) ?? [], is.get(key) ?? [], ({ statement: { mark } }) => mark);
        for (let i = 0; i < Math.max(old.length, now.length); i++) changes.push(changeOf(old[i], now[i]));
    }
    return changes.sort((a, b) => compareTexts(a.file, b.file) || lineOf(a) - lineOf(b));
}

/** Without tables that the other state has not: that another one is named is told where it is named, and its rows say nothing more. */
function besideIn(files: readonly StatedFile[], others: readonly StatedFile[]): StatedFile[] {
    const names = new Set(others.map(({ name }) => name));
    return files.filter(({ name, isTable }) => !isTable || names.has(name));
}

function placed(files: readonly StatedFile[]): Placed[] {
    return files.flatMap(({ name, statements }) => statements.map(statement => ({ file: name, statement })));
}

/** Blocks that stand once in either state: they are known by their name, in whatever file. What has no name (a job, labor, imports) belongs to its file. */
function onceInBoth(before: readonly StatedFile[], after: readonly StatedFile[]): ReadonlySet<string> {
    const once = (files: readonly StatedFile[]): Set<string> => {
        const all = files.flatMap(({ statements }) => [...new Set(statements.flatMap(blockOf))]);
        return new Set([...grouped(all, block => block)].filter(([, found]) => found.length === 1).map(([block]) => block));
    };
    const was = once(before);
    return new Set([...once(after)].filter(block => was.has(block)));
}

function blockOf({ within: [block] }: Statement): string[] {
    return block?.includes(' ') ? [block] : [];
}

/**
 * Files that are moved or renamed, by what they are called now: those of one state alone that hold a block which the other has in a file that is
 * gone. What has no name of its own (imports, a job) went with it.
 */
function movedFiles(before: readonly StatedFile[], after: readonly StatedFile[], free: ReadonlySet<string>): ReadonlyMap<string, string> {
    const namesOf = (files: readonly StatedFile[]): Set<string> => new Set(files.map(({ name }) => name)), was = namesOf(before), is = namesOf(after);
    const homeOf = new Map(before.filter(({ name }) => !is.has(name)).flatMap(({ name, statements }) => (
        statements.flatMap(blockOf).filter(block => free.has(block)).map(block => [block, name] as const))));
    const moved = new Map<string, string>(), taken = new Set<string>();
    for (const { name, statements } of after) {
        const from = was.has(name) ? undefined : statements.flatMap(blockOf).map(block => homeOf.get(block)).find(home => home !== undefined);
        if (from === undefined || taken.has(from)) continue;
        taken.add(from);
        moved.set(name, from);
    }
    return moved;
}

function keyBy(free: ReadonlySet<string>, movedFrom: ReadonlyMap<string, string> = new Map()): (one: Placed) => string {
    return ({ file, statement }) => {
        const [block] = blockOf(statement);
        return JSON.stringify([block !== undefined && free.has(block) ? '' : movedFrom.get(file) ?? file, statement.within, statement.what]);
    };
}

function changeOf(before: Placed | undefined, after: Placed | undefined): SaidChange {
    const { file, statement: { within, what } } = (after ?? before)!;
    return {
        file, ...before && after && before.file !== file && { movedFrom: before.file }, what: [...within, ...what === '' ? [] : [what]],
        ...before && { before: before.statement }, ...after && { after: after.statement },
    };
}

function lineOf({ before, after }: SaidChange): number {
    return (after ?? before)!.at.range.start.line;
}
