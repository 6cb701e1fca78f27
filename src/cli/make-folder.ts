import { dirname } from 'node:path';
import type { FileSystem } from './file-system.ts';

/**
 * Makes a folder and those above it that are not there; one that is there is as it should be. Throws the system's error otherwise. It goes step by step
 * since Node's own way to make several at once never ends where one of them cannot be made and the system says that it is not there, as in `/proc`.
 */
export async function makeFolder(disk: Pick<FileSystem, 'mkdir' | 'stat'>, path: string): Promise<void> {
    const above = dirname(path);
    try {
        await disk.mkdir(path);
    } catch (error) {
        const { code } = error as NodeJS.ErrnoException;
        if (code === 'ENOENT' && above !== path) {
            await makeFolder(disk, above);
            // the folder above is there now: what fails again fails for good
            await disk.mkdir(path);
        } else if (!(await disk.stat(path).then(found => found.isDirectory(), () => false))) throw error;
    }
}
