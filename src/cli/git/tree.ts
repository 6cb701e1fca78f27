import { resolve } from 'node:path';
import { printedBlobs } from '../../git/blobs.ts';
import { LIST_TREE, printedTree } from '../../git/listed.ts';
import { atKey } from '../../plain/at-key.ts';
import { UsageError } from '../exit-code.ts';
import { TABLE_ENDING } from '../../language/workspace/tables.ts';
import { SUFFIX } from '../find-files.ts';
import { decode, MOST_BYTES, tooLarge } from '../read-text.ts';
import { Git } from './git.ts';

/** The job files of a commit, and the tables that these name, by their way from the top with forward slashes. */
export interface Tree {
    readonly texts: ReadonlyMap<string, string>;
    /** Job files that there is no text of, with the reason. */
    readonly problems: ReadonlyMap<string, string>;
    /** Tables: their text, or the reason why there is none. */
    readonly tables: ReadonlyMap<string, { readonly text: string } | { readonly problem: string }>;
    /** Repositories within it that cannot be read at this commit, with the reason. */
    readonly notes: readonly string[];
}

/** More job files than any shop has; a repository may hold whatever else it likes. */
const MOST_FILES = 5_000;

/** Repositories within repositories are read so deep. */
const DEEPEST = 5;

/**
 * Reads them out of git's own store. What is behind a link is not followed. A repository within the repository, as of details that several houses share
 * (`git submodule`), is read at the commit that was used then, where it lies in its place.
 */
export async function treeOf(git: Git, commit: string, depth = 0): Promise<Tree> {
    const { out, words } = await git.ask([...LIST_TREE, commit]);
    if (!out) throw new UsageError(`git cannot read the files of ${commit.slice(0, 12)}: ${words.trim()}`);
    const problems = new Map<string, string>(), wanted: Wanted[] = [], tables: Wanted[] = [], within: Wanted[] = [];
    for (const { path, kind, blob, bytes } of printedTree(out)) {
        if (TABLE_ENDING.test(path) && kind === 'file' && bytes <= MOST_BYTES) tables.push({ path, blob });
        if (kind === 'other') within.push({ path, blob });
        if (!path.endsWith(SUFFIX)) continue;
        if (kind === 'link') problems.set(path, 'is a link there, which is not followed');
        else if (kind === 'other') problems.set(path, 'is no file there');
        else if (bytes > MOST_BYTES) problems.set(path, tooLarge());
        else wanted.push({ path, blob });
    }
    if (wanted.length > MOST_FILES) throw new UsageError(`There are ${wanted.length} job files in ${commit.slice(0, 12)}; ${MOST_FILES} are the most that are read`);
    const texts = new Map<string, string>();
    for (const { path, read } of await readAll(git, wanted)) {
        if ('text' in read) texts.set(path, read.text);
        else problems.set(path, read.problem);
    }
    // a repository holds whatever tables it likes: those whose names stand in a job file are enough
    const naming = [...texts.values()].filter(text => text.includes('readings')).join('\n');
    const named = tables.filter(({ path }) => naming.includes(path.slice(path.lastIndexOf('/') + 1))).slice(0, MOST_FILES);
    const own = { texts, problems, tables: new Map((await readAll(git, named)).map(({ path, read }) => [path, read])), notes: [] };
    const all = [own, ...depth < DEEPEST ? await Promise.all(within.map(each => treeWithin(git, each, depth))) : []];
    return {
        texts: new Map(all.flatMap(tree => [...tree.texts])), problems: new Map(all.flatMap(tree => [...tree.problems])),
        tables: new Map(all.flatMap(tree => [...tree.tables])),
        notes: all.flatMap(tree => tree.notes),
    };
}

const NOTHING: Tree = { texts: new Map(), problems: new Map(), tables: new Map(), notes: [] };

/** A repository within it, under its own ways; nothing where none lies there. */
async function treeWithin(git: Git, { path, blob: commit }: Wanted, depth: number): Promise<Tree> {
    const place = resolve(git.top, path);
    const inner = await Git.at(place).catch((error: unknown) => { if (error instanceof UsageError) return undefined; throw error; });
    // the folder of one that is not checked out is in the outer one, and what is behind a link lies elsewhere
    if (!inner || resolve(inner.top) !== place) return NOTHING;
    if (await inner.line(['cat-file', '-t', commit]) !== 'commit') return { ...NOTHING, notes: [`${path} is a repository of its own, and holds no commit ${commit.slice(0, 12)}, which was used then: fetch it there`] };
    const { texts, problems, tables, notes } = await treeOf(inner, commit, depth + 1);
    const below = <Value>(map: ReadonlyMap<string, Value>): Map<string, Value> => new Map([...map].map(([way, value]) => [`${path}/${way}`, value]));
    return { texts: below(texts), problems: below(problems), tables: below(tables), notes: notes.map(words => `${path}/${words}`) };
}
interface Wanted { readonly path: string; readonly blob: string }

async function readAll(git: Git, files: readonly Wanted[]): Promise<{ path: string; read: Read }[]> {
    // a commit may name what is stored once in thousands of places: each is a text once
    const blobs = await blobsOf(git, [...new Set(files.map(({ blob }) => blob))]), read = new Map<string, Read>();
    return files.map(({ path, blob }) => ({ path, read: atKey(read, blob, () => textOf(blobs.get(blob))) }));
}

type Read = { text: string } | { problem: string };

function textOf(bytes: Buffer | undefined): Read {
    if (!bytes) return { problem: 'is not in this clone, which holds only a part of the files: fetch it' };
    try {
        return { text: decode(bytes).text };
    } catch (error) {
        return { problem: (error as Error).message };
    }
}

/** The bytes of each; those that are not there are left out. */
async function blobsOf(git: Git, names: readonly string[]): Promise<Map<string, Buffer>> {
    if (names.length === 0) return new Map();
    const { out, words } = await git.ask(['cat-file', '--batch'], `${names.join('\n')}\n`);
    if (!out) throw new UsageError(`git cannot read what is stored: ${words.trim()}`);
    return printedBlobs(out);
}
