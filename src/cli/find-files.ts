import { dirname, join, relative, resolve, sep } from 'node:path';
import { MOST_FILES } from '../language/workspace/most-files.ts';
import { UsageError } from './exit-code.ts';
import { nodeFiles, type FileSystem } from './file-system.ts';
import { notPlain, reasonOf } from './read-text.ts';

export const SUFFIX = '.coffer';

export interface Found {
    /** Full paths, each once, in order. */
    readonly files: readonly string[];
    /** Full paths of the folders that were asked for, and of those that files asked for lie in. */
    readonly folders: readonly string[];
    /** What was asked for and cannot be had, in words. */
    readonly problems: readonly string[];
    /** What is as it may be, and worth knowing: links that lead out. */
    readonly notes: readonly string[];
}

/**
 * The files that were asked for: files as they are, folders with every `.coffer` file below them. What is called so below a folder
 * and is no file is told: nobody should think that it was read. Throws a UsageError where they are too many.
 */
export async function findFiles(asked: readonly string[], cwd: string, disk: FileSystem = nodeFiles): Promise<Found> {
    const look = new Look(cwd, disk);
    for (const name of asked) await look.at(name);
    return { files: [...look.files].sort(), folders: [...look.folders], problems: look.problems, notes: look.notes };
}

/** What is said of a folder without any. */
export function emptyFolder(name: string): string {
    return `${name}: there is no ${SUFFIX} file in this folder`;
}

class Look {
    readonly files = new Set<string>();
    readonly folders = new Set<string>();
    readonly problems: string[] = [];
    readonly notes: string[] = [];

    constructor(private readonly cwd: string, private readonly disk: FileSystem) {}

    async at(name: string): Promise<void> {
        // of an empty name, which a script may hand over by mistake, the system makes the current folder
        if (name === '') return void this.problems.push('One of the names is empty, and so names no file');
        const path = resolve(this.cwd, name);
        try {
            const info = await this.disk.stat(path);
            if (info.isDirectory()) {
                if (!await this.inFolder(path, path)) this.problems.push(emptyFolder(name));
                this.folders.add(path);
            } else if (!path.endsWith(SUFFIX)) this.problems.push(`${name} is not a ${SUFFIX} file`);
            else if (!info.isFile()) this.problems.push(`${name} ${notPlain(info)}`);
            else {
                await this.take(path, dirname(path), (await this.disk.lstat(path)).isSymbolicLink());
                this.folders.add(dirname(path));
            }
        } catch (error) {
            if (error instanceof UsageError) throw error;
            this.problems.push(`${name} ${reasonOf(error)}`);
        }
    }

    /** Hidden folders and installed packages are passed over, and links to folders, which could lead in a circle. True where there was any file. */
    private async inFolder(folder: string, top: string): Promise<boolean> {
        const entries = await this.disk.readdir(folder, { withFileTypes: true }).catch((error: unknown) => {
            this.problems.push(`${this.nameOf(folder)} ${reasonOf(error)}`);
            return [];
        });
        let any = false;
        for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
            const path = join(folder, entry.name), isOurs = entry.name.endsWith(SUFFIX);
            if (entry.isDirectory()) {
                if (isPassedOver(entry.name)) continue;
                const found = await this.inFolder(path, top);
                if (isOurs && !found) this.problems.push(`${this.nameOf(path)} is a folder, and no ${SUFFIX} file is in it`);
                any ||= found;
            } else if (isOurs) {
                any = true;
                await this.one(path, top, entry.isSymbolicLink());
            }
        }
        return any;
    }

    private async one(path: string, top: string, isLink: boolean): Promise<void> {
        try {
            const info = await this.disk.stat(path);
            if (info.isFile()) await this.take(path, top, isLink);
            else this.problems.push(`${this.nameOf(path)} ${isLink && info.isDirectory() ? 'is a link to a folder' : notPlain(info)}`);
        } catch (error) {
            if (error instanceof UsageError) throw error;
            this.problems.push(`${this.nameOf(path)} ${isLink && (error as NodeJS.ErrnoException).code === 'ENOENT' ? 'is a link to something that is not there' : reasonOf(error)}`);
        }
    }

    /** A link that leads out of what was asked for is followed, and told. */
    private async take(path: string, top: string, isLink: boolean): Promise<void> {
        this.files.add(path);
        if (this.files.size > MOST_FILES)
            throw new UsageError(`There are more than ${MOST_FILES} files in what was asked for, and that is the limit: name the folders of some houses`);
        if (!isLink) return;
        const target = await this.disk.realpath(path);
        const inside = await Promise.all([top, this.cwd].map(async folder => isWithin(target, await this.disk.realpath(folder))));
        if (!inside.includes(true)) this.notes.push(`${this.nameOf(path)} is a link to ${target}, outside of the folder: what is read is there`);
    }

    private nameOf(path: string): string {
        return relative(this.cwd, path) || path;
    }
}

/** True for a folder itself and for whatever lies below it. */
export function isWithin(path: string, folder: string): boolean {
    return path === folder || path.startsWith(folder.endsWith(sep) ? folder : folder + sep);
}

/** Whether nothing is looked for in a folder of that name: hidden ones, and installed packages. */
export function isPassedOver(folder: string): boolean {
    return folder.startsWith('.') || folder === 'node_modules';
}
