import { readFile, stat } from 'node:fs/promises';

/** A text file as it lies on the disk: what an editor would show of it, and how it begins. */
export interface DiskText { readonly text: string; readonly hasMark: boolean }

/** Far more than any house; a larger file is something else. */
const MOST_BYTES = 8_000_000;

/**
 * Reads a text. Throws an Error whose message says in plain words why there is none: not there, not readable, a folder,
 * too large, no text.
 */
export async function readText(path: string): Promise<DiskText> {
    const info = await stat(path).catch((error: unknown) => { throw new Error(reasonOf(error)); });
    if (info.isDirectory()) throw new Error('is a folder');
    if (!info.isFile()) throw new Error('is not a file');
    if (info.size > MOST_BYTES) throw new Error(`is too large for a job file: ${Math.round(info.size / 1e6)} MB`);
    return decode(await readFile(path).catch((error: unknown) => { throw new Error(reasonOf(error)); }));
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
        case 'ENOSPC': return 'does not fit on the disk any more';
        case 'EROFS': return 'lies on a disk that cannot be written to';
        case 'ELOOP': return 'is a link that leads in a circle';
        case 'ENAMETOOLONG': return 'has too long a name';
        default: return `cannot be opened (${code ?? String(error)})`;
    }
}
