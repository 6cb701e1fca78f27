import { mkdir, writeFile } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { Ceiling } from '../ceiling/model.ts';
import { EXIT, UsageError, worst, type ExitCode } from './exit-code.ts';
import { isSound, standingOf, type Standing } from '../pipeline/standing.ts';
import { standingNotice } from '../report/standing.ts';
import { foundBehind, passedBy, roomsMaybeLost } from './houses.ts';
import { openAsked, type Asked, type World } from './input.ts';
import { reasonOf } from './read-text.ts';
import type { Workspace } from './workspace.ts';

export interface RoomFilesOptions extends Asked {
    /** The folder the files go to; it is made where it is not there. */
    readonly out: string;
    /** Only these rooms; all where none is named. */
    readonly room: readonly string[];
}

/** A file made from a room. `names`: without its ending, the one that is wanted most first; another is taken where that is used already. */
export interface RoomFile { readonly names: readonly string[]; readonly ending: string; readonly content: string | Uint8Array }

/** Writes files for every room that was asked for, says their names, and what could not be made. `doing`: "Drawing". */
export async function writeRoomFiles(
    options: RoomFilesOptions, world: World, doing: string, make: (ceiling: Ceiling, workspace: Workspace, standing: Standing) => readonly RoomFile[] | Promise<readonly RoomFile[]>,
): Promise<ExitCode> {
    const { terminal, cwd } = world;
    const { workspace, code } = await openAsked(options, world);
    const checked = await workspace.check({ closely: true });
    const layouts = checked.flatMap(c => c.layouts);
    const unknown = options.room.filter(name => !layouts.some(l => l.room.name === name));
    if (unknown.length > 0) throw new UsageError(`There is no room ${unknown.join(', ')} in these files`);
    const wanted = layouts.filter(l => options.room.length === 0 || options.room.includes(l.room.name));

    const names = new FileNames();
    const folder = resolve(cwd, options.out);
    const lost = options.room.length > 0 ? [] : roomsMaybeLost(checked, workspace);
    lost.forEach(text => terminal.say(text));
    let worstCode = lost.length > 0 ? worst(code, EXIT.findings) : code;
    await mkdir(folder, { recursive: true }).catch((error: unknown) => { throw new UsageError(`${options.out} ${reasonOf(error)}`); });
    for (const { room, ceiling } of wanted) {
        const standing = standingOf(room, foundBehind(room.at.uri, checked, workspace), passedBy(checked), workspace.files.nameOf);
        if (!isSound(standing)) {
            standingNotice(standing).forEach((line, i) => terminal.say(i === 0 ? `room ${room.name}: ${line.charAt(0).toLowerCase()}${line.slice(1)}` : `  ${line}`));
            worstCode = worst(worstCode, EXIT.findings);
        }
        if (!ceiling) {
            terminal.say(`room ${room.name} cannot be laid out; \`cofferwright check\` shows why`);
            worstCode = worst(worstCode, EXIT.findings);
            continue;
        }
        terminal.progress(`${doing} ${room.name} ...`);
        await setImmediate();
        for (const file of await make(ceiling, workspace, standing)) {
            const name = names.free(file);
            const path = join(folder, name);
            await writeFile(path, file.content).catch((error: unknown) => { throw new UsageError(`${name} ${reasonOf(error)}`); });
            terminal.result(`${relative(cwd, path) || path}\n`);
        }
    }
    terminal.progress('');
    if (wanted.length === 0) terminal.say('There is no room in these files.');
    return worstCode;
}

/** Names of files, each once, also on a disk that does not tell capitals apart. */
class FileNames {
    private readonly taken = new Set<string>();

    free({ names, ending }: RoomFile): string {
        const last = names.at(-1)!;
        for (let n = 0; ; n++) {
            const name = `${names[n] ?? `${last}-${n - names.length + 2}`}.${ending}`.replace(/[^\w.-]/g, '_');
            if (this.taken.has(name.toLowerCase())) continue;
            this.taken.add(name.toLowerCase());
            return name;
        }
    }
}
