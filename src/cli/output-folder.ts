import { createHash } from 'node:crypto';
import { join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { destinationOf, isWithin, mustNotLeadOut, type Destination } from './destination.ts';
import { EXIT, UsageError, type ExitCode } from './exit-code.ts';
import { terminalLines } from '../text/terminal.ts';
import type { FileSystem } from './file-system.ts';
import type { OutputFile, OutputOptions } from './held-files.ts';
import { makeFolder } from './make-folder.ts';
import type { World } from './world.ts';
import { MadeFiles } from './made-files.ts';
import { reasonNotWritten } from './read-text.ts';
import { replaceFile } from './replace-file.ts';

export type { OutputFile, OutputOptions };

/**
 * A folder that files are made in. A file that is there already is replaced only where this program has made it and nobody
 * has changed it since; anything else is left, and said. `code` is how it went.
 */
export class OutputFolder {
    code: ExitCode = EXIT.clean;
    private readonly folder: string;
    /** The folder without links, as it was found at first: should it become one, nothing is written through it. */
    private real = '';
    private made: MadeFiles | undefined;

    /** What is still to be written. */
    private readonly open = new Set<string>();

    /** @param late once it is aborted no further file is begun */
    constructor(private readonly options: OutputOptions, private readonly world: Pick<World, 'cwd' | 'terminal' | 'disk' | 'hold'>, private readonly late?: AbortSignal) {
        this.folder = resolve(world.cwd, options.out);
    }

    /**
     * Writes what may be written and prints the names. `from`: the address of the file that says which house it is; what another house that
     * is still there has made under the same name is left, and said. Throws a UsageError where the folder itself cannot be had.
     */
    async write(files: readonly OutputFile[], from: string): Promise<void> {
        if (files.length === 0) return;
        if (this.world.hold) this.world.hold({ options: { out: this.options.out, force: this.options.force === true }, files, from });
        else await this.writeAll(files, fileURLToPath(from));
    }

    private async writeAll(files: readonly OutputFile[], from: string): Promise<void> {
        files.forEach(({ name }) => this.open.add(name));
        const made = this.made ??= await this.opened();
        const source = relative(this.folder, from).split(sep).join('/'), planned: Planned[] = [];
        for (const file of files) {
            if (this.late?.aborted) break;
            const bytes = typeof file.content === 'string' ? new TextEncoder().encode(file.content) : file.content;
            const planOne = { name: file.name, bytes, hash: hashOf(bytes) };
            try {
                planned.push({ ...planOne, ...await this.look(planOne, made, source) });
            } catch (error) {
                this.leave(file.name, error);
            }
        }
        // the list first: a file that it names and that was not written does no harm, the other way round it would be a stranger's
        if (!this.late?.aborted && made.add(planned, source)) await made.save().catch((error: unknown) => { throw new UsageError(`${this.nameOf(made.path)} ${reasonNotWritten(error)}`); });
        for (const { name, bytes, to, same } of planned) {
            if (this.late?.aborted) break;
            try {
                if (!same) await replaceFile(this.world.disk, to.path, bytes, to.before);
                this.open.delete(name);
                this.world.terminal.result(terminalLines([this.nameOf(join(this.folder, name))]));
            } catch (error) {
                this.leave(name, error);
            }
        }
    }

    private async opened(): Promise<MadeFiles> {
        const { disk, cwd } = this.world;
        try {
            await mustNotLeadOut(disk, this.folder, cwd);
            await makeFolder(disk, this.folder).catch((error: unknown) => { throw new Error(reasonNoFolder(error)); });
            this.real = await disk.realpath(this.folder);
            // what it has become since it was looked at
            await mustNotLeadOut(disk, this.folder, cwd);
            return await MadeFiles.of(disk, this.real);
        } catch (error) {
            throw new UsageError(`${this.options.out} ${reasonNotWritten(error)}`);
        }
    }

    private async look({ name, bytes, hash }: Wanted, made: MadeFiles, source: string): Promise<{ to: Destination; same: boolean }> {
        const { disk } = this.world;
        const to = await destinationOf(disk, join(this.real, name), [this.real]);
        if (!isWithin(to.path, this.real)) throw new Error(`was led to ${to.path} meanwhile: left as it is`);
        if (!to.before) return { to, same: false };
        // a file that nobody would recognize is not read, however long it is
        const there = to.before.size === bytes.length || made.knows(name) ? await hashOfFile(disk, to.path) : undefined;
        if (there === hash) return { to, same: true };
        if (!this.options.force && (there === undefined || !made.has(name, there)))
            throw new Error(`${made.knows(name) ? 'has been changed since this program made it' : 'is there already, and this program has not made it'}: left as it is; --force replaces it`);
        const other = made.sourceOf(name);
        if (!this.options.force && other !== undefined && other !== source && await isThere(disk, resolve(this.folder, other)))
            throw new Error(`was made from ${this.nameOf(resolve(this.folder, other))}, which gives it the same name: left as it is; --force replaces it, another --out keeps both`);
        return { to, same: false };
    }

    private leave(name: string, error: unknown): void {
        this.open.delete(name);
        this.world.terminal.say(`${this.nameOf(join(this.folder, name))} ${reasonNotWritten(error)}`);
        this.code = EXIT.usage;
    }

    /** What was to be written and is not, by the names it would be told by. */
    get unwritten(): string[] {
        return [...this.open].map(name => this.nameOf(join(this.folder, name)));
    }

    private nameOf(path: string): string {
        return relative(this.world.cwd, path) || path;
    }
}

/** Why a folder cannot be made, and what to do. */
function reasonNoFolder(error: unknown): string {
    switch ((error as NodeJS.ErrnoException).code) {
        case 'ENOENT': return 'cannot be made: the system keeps no folders of yours there. Name another folder with --out';
        case 'ENOTDIR': return 'cannot be made: a part of its path is a file, and no folder. Name another folder with --out';
        default: return reasonNotWritten(error);
    }
}

interface Wanted { readonly name: string; readonly bytes: Uint8Array; readonly hash: string }
interface Planned extends Wanted { readonly to: Destination; readonly same: boolean }

function isThere(disk: FileSystem, path: string): Promise<boolean> {
    return disk.stat(path).then(() => true, () => false);
}

function hashOf(bytes: Uint8Array): string {
    return createHash('sha256').update(bytes).digest('hex');
}

async function hashOfFile(disk: FileSystem, path: string): Promise<string> {
    const handle = await disk.open(path, 'r');
    try {
        const hash = createHash('sha256');
        for await (const chunk of handle.createReadStream({ autoClose: false })) hash.update(chunk as Uint8Array);
        return hash.digest('hex');
    } finally {
        await handle.close();
    }
}
