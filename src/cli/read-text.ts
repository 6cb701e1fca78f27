import { constants, type Stats } from 'node:fs';
import { nodeFiles, type FileSystem } from './file-system.ts';

/** A text file as it lies on the disk: what an editor would show of it, and how it begins. */
interface DiskText { readonly text: string; readonly hasMark: boolean }

/** Far more than any house; a larger file is something else. Holds for standard input too. */
export const MOST_BYTES = 8_000_000;

/**
 * Reads a text. Throws an Error whose message says in plain words why there is none: not there, not readable, a folder,
 * a device, too large, no text. Never waits for what may never come, and never reads on without an end.
 */
export async function readText(path: string, disk: Pick<FileSystem, 'open' | 'stat'> = nodeFiles): Promise<DiskText & { readonly stats: Stats }> {
    try {
        // looked at before it is opened: to open a device may already do something
        mustBePlain(await disk.stat(path));
        // a pipe that has taken its place since must not be waited for
        const handle = await disk.open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
        try {
            const stats = await handle.stat();
            mustBePlain(stats);
            const { buffer, bytesRead } = await readUpTo(handle, MOST_BYTES + 1, stats.size);
            if (bytesRead > MOST_BYTES) throw new Error(tooLarge());
            return { ...decode(buffer.subarray(0, bytesRead)), stats };
        } finally {
            await handle.close();
        }
    } catch (error) {
        throw (error as NodeJS.ErrnoException).code === undefined ? error : new Error(reasonOf(error));
    }
}

function mustBePlain(info: Stats): void {
    if (!info.isFile()) throw new Error(notPlain(info));
    if (info.size > MOST_BYTES) throw new Error(tooLarge());
}

/** What it is that is no file. */
export function notPlain(info: Stats): string {
    return info.isDirectory() ? 'is a folder' : `is not a file, but a ${info.isFIFO() ? 'pipe' : info.isSocket() ? 'socket' : 'device'}`;
}

export function tooLarge(): string {
    return `is too large for a job file: more than ${MOST_BYTES / 1e6} MB`;
}

/** All of a file, or its first bytes where it has more; some files do not know their size. */
async function readUpTo(handle: Awaited<ReturnType<FileSystem['open']>>, most: number, size: number): Promise<{ buffer: Uint8Array; bytesRead: number }> {
    let buffer = new Uint8Array(Math.min(most, size + 1));
    for (let bytesRead = 0; ;) {
        const part = await handle.read(buffer, bytesRead, buffer.length - bytesRead, null);
        bytesRead += part.bytesRead;
        if (part.bytesRead === 0 || bytesRead >= most) return { buffer, bytesRead };
        if (bytesRead < buffer.length) continue;
        const wider = new Uint8Array(Math.min(most, buffer.length * 2 + 65_536));
        wider.set(buffer);
        buffer = wider;
    }
}

/** UTF-8, with or without a byte order mark. Throws where the bytes are something else. */
export function decode(bytes: Uint8Array): DiskText {
    if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) throw new Error('is UTF-16 text: save it as UTF-8');
    if (bytes.subarray(0, 8000).includes(0)) throw new Error('is not a text file');
    let text: string;
    try {
        text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    } catch {
        throw new Error('is not UTF-8 text: save it as UTF-8');
    }
    return text.startsWith('\ufeff') ? { text: text.slice(1), hasMark: true } : { text, hasMark: false };
}

/** The system's errors in plain words. */
export function reasonOf(error: unknown): string {
    const code = (error as NodeJS.ErrnoException | undefined)?.code;
    switch (code) {
        case 'ENOENT': case 'ENOTDIR': return 'is not there';
        case 'EACCES': case 'EPERM': return 'may not be opened';
        case 'EISDIR': return 'is a folder';
        case 'ENXIO': return 'is not a file';
        case 'EIO': return 'cannot be read: the disk fails';
        case 'ENOSPC': return 'does not fit on the disk any more';
        case 'EROFS': return 'lies on a disk that cannot be written to';
        case 'ELOOP': return 'is a link that leads in a circle';
        case 'ENAMETOOLONG': return 'has too long a name';
        default: return `cannot be opened (${code ?? String(error)})`;
    }
}

/** The same of a file that was to be written. Errors in plain words already stay what they are. */
export function reasonNotWritten(error: unknown): string {
    const code = (error as NodeJS.ErrnoException | undefined)?.code;
    switch (code) {
        case undefined: return error instanceof Error ? error.message : String(error);
        case 'EACCES': case 'EPERM': return 'may not be written';
        case 'EEXIST': return 'is there already, and is no folder';
        case 'ENOENT': return 'cannot be written: its folder is not there any more';
        case 'EFBIG': case 'EDQUOT': return 'is more than may be written to this disk';
        case 'EIO': return 'cannot be written: the disk fails';
        case 'CHANGED': return 'has been changed by somebody else meanwhile: left as it is';
        case 'ENOTDIR': return 'lies in no folder';
        case 'ENOSPC': case 'EROFS': case 'EISDIR': case 'ELOOP': case 'ENAMETOOLONG': return reasonOf(error);
        default: return `cannot be written (${code})`;
    }
}
