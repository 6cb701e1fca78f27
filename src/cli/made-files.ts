import type { Stats } from 'node:fs';
import { join } from 'node:path';
import { destinationOf } from './destination.ts';
import type { FileSystem } from './file-system.ts';
import { replaceFile } from './replace-file.ts';

const LIST = '.cofferwright.sha256';
/** Tens of thousands of files; a longer list is somebody else's. */
const MOST_BYTES = 4_000_000;
const MOST_TRIES = 10;

/**
 * What this program has made in a folder: names and SHA-256 in a list beside the files, in the form that `sha256sum --check`
 * reads. By their bytes and not by a mark inside, since a CSV has no room for one, and since a file that somebody has
 * written notes into would still carry it.
 */
export class MadeFiles {
    private constructor(
        private readonly disk: FileSystem, readonly path: string,
        private readonly hashes: Map<string, readonly string[]>, private readonly sources: Map<string, string>, private readonly before: Stats | undefined,
    ) {}

    /** What this run has added: of all else another run may know more by the time the list is written. */
    private readonly own = new Set<string>();

    /** Throws where the list is no file that could be written again. */
    static async of(disk: FileSystem, folder: string): Promise<MadeFiles> {
        const path = join(folder, LIST);
        const { before } = await destinationOf(disk, path, [folder]).catch((error: unknown) => { throw new Error(`holds ${LIST}, which ${(error as Error).message}`); });
        const hashes = new Map<string, readonly string[]>();
        if (before && before.size > MOST_BYTES) throw new Error(`holds ${LIST}, which is not the list of what this program has made there`);
        const text = before ? await textOf(disk, path) : '';
        for (const [, hash, name] of text.matchAll(/^([0-9a-f]{64}) [ *](.+)$/gm)) hashes.set(name!, [...hashes.get(name!) ?? [], hash!]);
        const sources = new Map([...text.matchAll(/^# (\S+) from (\S+)$/gm)].map(([, name, source]) => [name!, source!]));
        return new MadeFiles(disk, path, hashes, sources, before);
    }

    knows(name: string): boolean {
        return this.hashes.has(name);
    }

    has(name: string, hash: string): boolean {
        return this.hashes.get(name)?.includes(hash) === true;
    }

    /** The file of the job that one was made from, from the folder; undefined where nobody has noted it. */
    sourceOf(name: string): string | undefined {
        const source = this.sources.get(name);
        return source === undefined ? undefined : decodeURI(source);
    }

    /**
     * Files that are about to be written, and the file of the job they are made from, from the folder. What they replace stays known until
     * the next time, should they not get there. True where that is news.
     */
    add(files: readonly { readonly name: string; readonly hash: string }[], source: string): boolean {
        const fresh = files.filter(({ name, hash }) => !this.has(name, hash));
        for (const { name, hash } of fresh) this.hashes.set(name, [...this.hashes.get(name)?.slice(-1) ?? [], hash]);
        const moved = files.filter(({ name }) => this.sourceOf(name) !== source);
        for (const { name } of moved) this.sources.set(name, encodeURI(source));
        for (const { name } of files) this.own.add(name);
        return fresh.length + moved.length > 0;
    }

    /** Another run may write the same list just then: what it has added stays. */
    async save(): Promise<void> {
        for (let tries = 1; ; tries++) {
            try {
                return await this.saveOver(await MadeFiles.of(this.disk, join(this.path, '..')));
            } catch (error) {
                if ((error as NodeJS.ErrnoException).code !== 'CHANGED' || tries === MOST_TRIES) throw error;
            }
        }
    }

    private async saveOver(there: MadeFiles): Promise<void> {
        for (const [name, hashes] of there.hashes) {
            const own = this.own.has(name) ? this.hashes.get(name)! : [];
            this.hashes.set(name, own.length === 0 ? hashes : [...hashes.filter(hash => !own.includes(hash)).slice(-1), ...own].slice(-2));
        }
        for (const [name, source] of there.sources) if (!this.own.has(name)) this.sources.set(name, source);
        const lines = [...this.hashes].flatMap(([name, hashes]) => hashes.map(hash => `${hash}  ${name}\n`)).sort((a, b) => (a.slice(66) < b.slice(66) ? -1 : a.slice(66) > b.slice(66) ? 1 : 0));
        // a line that begins so is a remark to sha256sum
        const sources = [...this.sources].map(([name, source]) => `# ${name} from ${source}\n`).sort();
        await replaceFile(this.disk, this.path, [...lines, ...sources].join(''), there.before);
    }
}

async function textOf(disk: FileSystem, path: string): Promise<string> {
    const handle = await disk.open(path, 'r');
    try {
        return await handle.readFile('utf8');
    } finally {
        await handle.close();
    }
}
