import { resolve } from 'node:path';
import { EXIT, UsageError, type ExitCode } from './exit-code.ts';
import { findFiles, SUFFIX } from './find-files.ts';
import { decode, MOST_BYTES, reasonOf, tooLarge } from './read-text.ts';
import { Workspace } from './workspace.ts';
import type { World } from './world.ts';

export interface Asked { readonly files: readonly string[]; readonly stdinFilePath?: string }

/** A workspace with the files that were asked for, and how it went. */
interface Opened { readonly workspace: Workspace; readonly code: ExitCode; readonly paths: readonly string[] }

/**
 * Opens what was asked for: files, folders, standard input for `-`; the current folder where nothing is said. What is not
 * there or cannot be read is said, and the rest is opened all the same. Throws a UsageError where nothing is left.
 */
export function openAsked(asked: Asked, world: World): Promise<Opened> {
    return once('opened', world, heard => open(asked, heard));
}

/** Where a command is done several times, what it begins with is done once, and what was said of it is said again. */
export async function once<T extends object>(what: string, world: World, make: (world: World) => Promise<T>): Promise<T> {
    if (!world.kept) return make(world);
    const known = kept.get(world.kept)?.get(what);
    if (known) {
        known.said.forEach(words => world.terminal.say(words));
        return known.made as T;
    }
    const said: string[] = [], { terminal } = world;
    const made = await make({ ...world, terminal: { ...terminal, say: words => { said.push(words); terminal.say(words); } } });
    kept.set(world.kept, (kept.get(world.kept) ?? new Map<string, Made>()).set(what, { made, said }));
    return made;
}

interface Made { readonly made: object; readonly said: readonly string[] }
/** By the key of the command, and by what was done. */
const kept = new WeakMap<object, Map<string, Made>>();

async function open({ files, stdinFilePath }: Asked, world: World): Promise<Opened> {
    const { cwd, terminal, disk, readStdin } = world;
    const fromStdin = files.includes('-') || stdinFilePath !== undefined;
    const named = files.filter(name => name !== '-');
    if (stdinFilePath !== undefined && named.length > 0) throw new UsageError('--stdin-file-path says where standard input belongs; name no other files with it');
    if (stdinFilePath !== undefined && !stdinFilePath.endsWith(SUFFIX)) throw new UsageError(`${stdinFilePath} is not a ${SUFFIX} file`);
    const found = await findFiles(named.length === 0 && !fromStdin ? ['.'] : named, cwd, disk);
    [...found.problems, ...found.notes].forEach(words => terminal.say(words));

    const workspace = await Workspace.open(world, found.folders);
    const paths = [...found.files];
    if (fromStdin) {
        const path = resolve(cwd, stdinFilePath ?? 'stdin.coffer');
        workspace.layOver(path, await stdinText(readStdin), stdinFilePath ?? '<stdin>');
        paths.push(path);
    }
    if (paths.length === 0) throw new UsageError('There is nothing to read');
    await workspace.add(paths);
    const unreadable = workspace.problems(), outside = await workspace.leadingOut();
    [...unreadable, ...outside].forEach(words => terminal.say(words));
    return { workspace, paths, code: found.problems.length + unreadable.length > 0 ? EXIT.usage : EXIT.clean };
}

export async function stdinText(readStdin: () => Promise<Uint8Array>): Promise<string> {
    try {
        const bytes = await readStdin();
        if (bytes.length > MOST_BYTES) throw new Error(tooLarge());
        return decode(bytes).text;
    } catch (error) {
        throw new UsageError(`Standard input ${(error as NodeJS.ErrnoException).code === undefined ? (error as Error).message : reasonOf(error)}`);
    }
}
