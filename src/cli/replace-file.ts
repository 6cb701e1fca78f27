import { randomBytes } from 'node:crypto';
import type { FileHandle } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { FileSystem, FoundFile } from './file-system.ts';

/**
 * Puts a file in place as a whole: the bytes go to a new file beside it, are on the disk before it takes the name, and
 * where anything fails the new file goes and the old one is what it was. Every write of the program is this one.
 *
 * @param path without a link in its folder: a folder that became one meanwhile would lead the bytes elsewhere, so it is left.
 * @param before the file that is replaced, as it was found: its permissions and its owner are kept. Where it is not the
 *   same any more when its turn comes, somebody else has written it, and it is left.
 */
export async function replaceFile(disk: FileSystem, path: string, content: string | Uint8Array, before?: FoundFile): Promise<void> {
    await mustBeNoLink(disk, dirname(path));
    // the name says nothing of the file's own, which may be as long as a name can be
    const fresh = join(dirname(path), `.cofferwright-${randomBytes(6).toString('hex')}.tmp`);
    const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
    // never into a file or a link that is there already
    unfinished.add(fresh);
    const handle = await disk.open(fresh, 'wx', before === undefined ? 0o666 : before.mode & 0o777).catch((error: unknown) => {
        unfinished.delete(fresh);
        throw error;
    });
    try {
        try {
            await writeAll(handle, bytes);
            if (before) await keepOwnership(handle, before);
            await handle.sync();
        } finally {
            await handle.close();
        }
        await mustBeAsBefore(disk, path, before);
        await mustBeNoLink(disk, dirname(path));
        await disk.rename(fresh, path);
    } catch (error) {
        await disk.unlink(fresh).catch(() => {});
        throw error;
    } finally {
        unfinished.delete(fresh);
    }
    await syncFolder(disk, dirname(path));
}

/** New files that have not taken their names yet: what is left of them when the program has to end at once is removed. */
export const unfinished = new Set<string>();

/** A disk may take less than it was given and say so. */
async function writeAll(handle: FileHandle, bytes: Uint8Array): Promise<void> {
    for (let done = 0; done < bytes.length;) {
        const { bytesWritten } = await handle.write(bytes, done, bytes.length - done);
        if (bytesWritten <= 0) throw Object.assign(new Error('nothing was written'), { code: 'EIO' });
        done += bytesWritten;
    }
}

/** Only the administrator may give files away: where the owner cannot be kept the permissions still are. */
async function keepOwnership(handle: FileHandle, { mode, uid, gid }: FoundFile): Promise<void> {
    const now = await handle.stat();
    if (now.uid !== uid || now.gid !== gid) await handle.chown(uid, gid).catch(onlyWhereAllowed);
    await handle.chmod(mode & 0o7777).catch(onlyWhereAllowed);
}

function onlyWhereAllowed(error: unknown): void {
    if (!['EPERM', 'ENOSYS', 'EINVAL', 'ENOTSUP'].includes((error as NodeJS.ErrnoException).code ?? '')) throw error;
}

async function mustBeAsBefore(disk: FileSystem, path: string, before: FoundFile | undefined): Promise<void> {
    const now = await disk.lstat(path).catch((error: unknown) => {
        if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
        throw error;
    });
    // where its folder is gone too nobody has changed it
    if (now === undefined && before !== undefined) await disk.lstat(dirname(path));
    const same = now === undefined || before === undefined ? now === before
        : now.ino === before.ino && now.size === before.size && now.mtimeMs === before.mtimeMs;
    if (!same) throw Object.assign(new Error('changed meanwhile'), { code: 'CHANGED' });
}

async function mustBeNoLink(disk: FileSystem, folder: string): Promise<void> {
    const target = await disk.realpath(folder);
    if (target !== folder) throw new Error(`was led to ${target} meanwhile: left as it is`);
}

/** So that the new name outlives a loss of power. Not every system can, and the file itself is whole either way. */
async function syncFolder(disk: FileSystem, folder: string): Promise<void> {
    try {
        const handle = await disk.open(folder, 'r');
        await handle.sync().catch(() => {});
        await handle.close();
    } catch {
        // as above
    }
}
