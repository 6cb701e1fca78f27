import { dirname, join, resolve, sep } from 'node:path';
import { nodeFiles, type FileSystem } from './file-system.ts';
import { reasonOf } from './read-text.ts';

export const SUFFIX = '.coffer';

export interface Found {
    /** Full paths, each once, in order. */
    readonly files: readonly string[];
    /** Full paths of the folders that were asked for, and of those that files asked for lie in. */
    readonly folders: readonly string[];
    /** What was asked for and is not there, in words. */
    readonly problems: readonly string[];
}

/** The files that were asked for: files as they are, folders with every `.coffer` file below them. */
export async function findFiles(asked: readonly string[], cwd: string, disk: FileSystem = nodeFiles): Promise<Found> {
    const files = new Set<string>(), folders = new Set<string>();
    const problems: string[] = [];
    for (const name of asked) {
        const path = resolve(cwd, name);
        try {
            if ((await disk.stat(path)).isDirectory()) {
                const below = await cofferFilesIn(path, problems, disk);
                if (below.length === 0) problems.push(`${name}: there is no ${SUFFIX} file in this folder`);
                below.forEach(file => files.add(file));
                folders.add(path);
            } else if (path.endsWith(SUFFIX)) {
                files.add(path);
                folders.add(dirname(path));
            } else problems.push(`${name} is not a ${SUFFIX} file`);
        } catch (error) {
            problems.push(`${name} ${reasonOf(error)}`);
        }
    }
    return { files: [...files].sort(), folders: [...folders], problems };
}

/** Hidden folders and installed packages are passed over, and links to folders, which could lead in a circle. */
async function cofferFilesIn(folder: string, problems: string[], disk: FileSystem): Promise<string[]> {
    const entries = await disk.readdir(folder, { withFileTypes: true }).catch((error: unknown) => {
        problems.push(`${folder} ${reasonOf(error)}`);
        return [];
    });
    const files: string[] = [];
    for (const entry of entries) {
        const path = join(folder, entry.name);
        if (entry.isDirectory()) {
            if (!entry.name.startsWith('.') && entry.name !== 'node_modules') files.push(...await cofferFilesIn(path, problems, disk));
        } else if (entry.name.endsWith(SUFFIX) && (entry.isFile() || await isFile(path, disk))) files.push(path);
    }
    return files;
}

async function isFile(path: string, disk: FileSystem): Promise<boolean> {
    return disk.stat(path).then(info => info.isFile(), () => false);
}

/** True for a folder itself and for whatever lies below it. */
export function isWithin(path: string, folder: string): boolean {
    return path === folder || path.startsWith(folder.endsWith(sep) ? folder : folder + sep);
}
