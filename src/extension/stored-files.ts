import { realpath } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { askGit } from '../git/ask.ts';
import { printedBlobs } from '../git/blobs.ts';
import { namedCommits, type NamedCommit } from '../git/commits.ts';
import { LIST_TREE, printedTree, type Listed } from '../git/listed.ts';

/** What a file said at a commit: its bytes, or why there are none; undefined where there was no such file. */
export type Stored = Uint8Array | 'link' | 'too-large' | 'unreadable' | undefined;

/**
 * Reads files as a commit has them, past every conversion that is configured: the editor's own git would run it. `program`: the git that the editor
 * found; `top`: the repository's folder; `most`: bytes that are read of one.
 */
type ReadStored = (program: string, top: string, commit: string, paths: readonly string[], most: number) => Promise<readonly Stored[]>;

/** So many names fit into one question on every system. */
const AT_ONCE = 200;

/** What git knows of commits by their names. */
type NameCommits = (program: string, top: string, names: readonly string[]) => Promise<ReadonlyMap<string, NamedCommit>>;
export const nameCommits: NameCommits = (program, top, names) => namedCommits(words => askGit(top, words, { program }), names);

/** What only an editor with a machine has: git's own store, read past the editor. */
export interface Store { readonly read: ReadStored; readonly name: NameCommits }

export const readStored: ReadStored = async (program, top, commit, paths, most) => {
    const real = await realpath(top).catch(() => top);
    const ways = paths.map(path => [relative(top, path), relative(real, path)].map(way => way.replaceAll('\\', '/')).find(way => !way.startsWith('..')));
    const wanted = [...new Set(ways.filter(way => way !== undefined))], listed = new Map<string, Listed>();
    for (let at = 0; at < wanted.length; at += AT_ONCE) {
        const { out } = await askGit(top, [...LIST_TREE, commit, '--', ...wanted.slice(at, at + AT_ONCE)], { program });
        for (const one of out ? printedTree(out) : []) listed.set(one.path, one);
    }
    const readable = [...listed.values()].filter(({ kind, bytes }) => kind === 'file' && bytes <= most);
    const { out } = readable.length === 0 ? {} : await askGit(top, ['cat-file', '--batch'], { program, input: `${readable.map(({ blob }) => blob).join('\n')}\n` });
    const blobs = out ? printedBlobs(out) : new Map<string, Buffer>();
    const within = await storedWithin(program, real, commit, wanted.filter(way => !listed.has(way)), most);
    return ways.map((way): Stored => {
        const one = way === undefined ? undefined : listed.get(way);
        if (!one) return within.get(way ?? '');
        if (one.kind !== 'file') return one.kind === 'link' ? 'link' : 'unreadable';
        return one.bytes > most ? 'too-large' : blobs.get(one.blob) ?? 'unreadable';
    });
};

/** What lies in a repository within the repository, such as details that several houses share, is read at the commit that was used then. */
async function storedWithin(program: string, top: string, commit: string, ways: readonly string[], most: number): Promise<ReadonlyMap<string, Stored>> {
    const folders = [...new Set(ways.flatMap(foldersOf))], found = new Map<string, Stored>(), links: Listed[] = [];
    for (let at = 0; at < folders.length; at += AT_ONCE) {
        const { out } = await askGit(top, ['ls-tree', '-l', '-z', '--full-tree', commit, '--', ...folders.slice(at, at + AT_ONCE)], { program });
        links.push(...out ? printedTree(out).filter(({ path, kind }) => kind === 'other' && folders.includes(path)) : []);
    }
    for (const { path, blob } of links) {
        const place = resolve(top, path), inside = ways.filter(way => way.startsWith(`${path}/`));
        // the folder of one that is not checked out is in the outer one, and what is behind a link lies elsewhere
        if (await realpath(place).catch(() => undefined) !== place) continue;
        const { out } = await askGit(place, ['rev-parse', '--show-toplevel'], { program });
        if (!out || resolve(out.toString('utf8').trim()) !== place) continue;
        const stored = await readStored(program, place, blob, inside.map(way => join(top, way)), most);
        inside.forEach((way, i) => found.set(way, stored[i]));
    }
    return found;
}

/** `a/b` and `a` of `a/b/c.coffer`. */
function foldersOf(way: string): string[] {
    const names = way.split('/').slice(0, -1);
    return names.map((_, i) => names.slice(0, i + 1).join('/'));
}
