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
    const keyOf = keyBy(onceInBoth(olds, nows)), was = grouped(placed(olds), keyOf), is = grouped(placed(nows), keyOf);
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

function keyBy(free: ReadonlySet<string>): (one: Placed) => string {
    return ({ file, statement }) => {
        const [block] = blockOf(statement);
        return JSON.stringify([block !== undefined && free.has(block) ? '' : file, statement.within, statement.what]);
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
