import { realpath } from 'node:fs/promises';
import { relative } from 'node:path';
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
    return ways.map((way): Stored => {
        const one = way === undefined ? undefined : listed.get(way);
        if (!one) return undefined;
        if (one.kind !== 'file') return one.kind === 'link' ? 'link' : 'unreadable';
        return one.bytes > most ? 'too-large' : blobs.get(one.blob) ?? 'unreadable';
    });
};
