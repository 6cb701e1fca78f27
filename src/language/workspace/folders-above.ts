import { UriUtils, type FileSystemProvider, type URI } from 'langium';

/** A folder and those above it, the nearest first, up to and with `top`; up to the root without one. */
export function foldersAbove(folder: URI, top?: URI): URI[] {
    const folders = [folder], last = top?.toString();
    for (let next = folder; next.toString() !== last; ) {
        const above = UriUtils.dirname(next);
        if (above.path === next.path || above.path === '' || above.path === '.') break;
        folders.push(next = above);
    }
    return folders;
}

/** The folder of the repository that a folder lies in: the nearest upward that holds `.git`. Undefined outside of one. */
export async function repositoryOf(folder: URI, files: Pick<FileSystemProvider, 'exists'>): Promise<URI | undefined> {
    for (const above of foldersAbove(folder)) if (await files.exists(UriUtils.joinPath(above, '.git'))) return above;
    return undefined;
}

/**
 * The files of some folders that say a job, labor or a bid, which holds for whatever lies below them. A folder that cannot be listed
 * has none; one that cannot be read is passed over.
 */
export async function houseWideFiles(folders: readonly URI[], files: Pick<FileSystemProvider, 'readDirectory' | 'readFile'>): Promise<URI[]> {
    const listed = (await Promise.all(folders.map(folder => files.readDirectory(folder).catch(() => [])))).flat().map(({ uri }) => uri);
    const holds = await Promise.all(listed.map(uri => isHouseWide(uri, files)));
    return listed.filter((_, i) => holds[i]);
}

/** Whether a file says a job, labor or a bid. False where it cannot be read. */
export async function isHouseWide(uri: URI, files: Pick<FileSystemProvider, 'readFile'>): Promise<boolean> {
    if (!uri.path.endsWith('.coffer')) return false;
    const text = await Promise.resolve(files.readFile(uri)).catch(() => '');
    return /^[ \t]*(job|labor|bid)\b/m.test(text);
}
