import type { Stats } from 'node:fs';
import { dirname, isAbsolute, relative, resolve } from 'node:path';
import type { FileSystem } from './file-system.ts';

/** Where the bytes of a file go. `before`: what is there already, a plain file. */
export interface Destination { readonly path: string; readonly before?: Stats }

/**
 * Where a write to `path` ends: there, or through a link at its target, which must lie within one of the folders that were
 * asked for. Throws an Error whose message says in plain words why it must not be written: a link that leads out or
 * nowhere, no plain file, read-only.
 */
export async function destinationOf(disk: FileSystem, path: string, folders: readonly string[]): Promise<Destination> {
    const found = await orMissing(disk.lstat(path));
    if (found === undefined) return { path };
    const target = await orMissing(disk.realpath(path));
    if (target === undefined) throw new Error('is a link to something that is not there: left as it is');
    const allowed = await Promise.all(folders.map(folder => disk.realpath(folder)));
    if (!allowed.some(folder => isWithin(target, folder))) throw new Error(`is a link to ${target}, outside of the folder: left as it is`);
    const before = await disk.lstat(target);
    if (before.isDirectory()) throw new Error('is a folder');
    if (!before.isFile()) throw new Error('is not a plain file: left as it is');
    // asked of the file and not of the system: the administrator may write everything, and should not by accident
    if ((before.mode & 0o222) === 0) throw new Error('is read-only: left as it is');
    return { path: target, before };
}

/**
 * Throws where a folder below the current one leads out of it through a link: somebody who means a folder elsewhere names
 * it. The folder itself need not be there yet.
 */
export async function mustNotLeadOut(disk: FileSystem, folder: string, cwd: string): Promise<void> {
    if (!isWithin(folder, cwd)) return;
    for (let there = folder; ; there = dirname(there)) {
        if (await orMissing(disk.lstat(there)) === undefined) continue;
        const target = await orMissing(disk.realpath(there));
        const link = there === folder ? 'is a link' : `lies in ${relative(cwd, there)}, a link`;
        if (target === undefined) throw new Error(`${link} to something that is not there`);
        if (!isWithin(target, await disk.realpath(cwd))) throw new Error(`${link} to ${target}, outside of the current folder: name that folder where you mean it`);
        return;
    }
}

export function isWithin(path: string, folder: string): boolean {
    const way = relative(folder, resolve(path));
    return way === '' || (way !== '..' && !/^\.\.[\\/]/.test(way) && !isAbsolute(way));
}

async function orMissing<T>(found: Promise<T>): Promise<T | undefined> {
    return found.catch((error: unknown) => {
        if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
        throw error;
    });
}
