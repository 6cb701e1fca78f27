import { setImmediate } from 'node:timers/promises';
import type { Ceiling } from '../ceiling/model.ts';
import { EXIT, UsageError, worst, type ExitCode } from './exit-code.ts';
import { fileNameOf, type FileName } from '../text/file-name.ts';
import { isSound, standingOf, type Standing } from '../pipeline/standing.ts';
import { standingNotice } from '../report/standing.ts';
import type { Content } from '../text/fit.ts';
import { addressOf } from '../report/house.ts';
import { FileNames } from './file-names.ts';
import { foundBehind, passedBy, roomsMaybeLost } from './houses.ts';
import { openAsked, type Asked } from './input.ts';
import type { World } from './world.ts';
import { OutputFolder, type OutputOptions } from './output-folder.ts';
import type { Workspace } from './workspace.ts';

export interface RoomFilesOptions extends Asked, OutputOptions {
    /** Only these rooms; all where none is named. */
    readonly room: readonly string[];
}

/** A file made from a room. `names`: without its ending, the one that is wanted most first; another is taken where that is used already. */
interface RoomFile { readonly names: readonly string[]; readonly ending: string; readonly content: Content }

/** Writes files for every room that was asked for, says their names, and what could not be made. `doing`: "Drawing". */
export async function writeRoomFiles(
    options: RoomFilesOptions, world: World, doing: string,
    make: (ceiling: Ceiling, workspace: Workspace, standing: Standing) => readonly RoomFile[] | Promise<readonly RoomFile[]>,
): Promise<ExitCode> {
    const { terminal } = world;
    const { workspace, code } = await openAsked(options, world);
    const checked = await workspace.check({ closely: true });
    const layouts = checked.flatMap(c => c.layouts);
    const unknown = options.room.filter(name => !layouts.some(l => l.room.name === name));
    if (unknown.length > 0) throw new UsageError(`There is no room ${unknown.join(', ')} in these files`);
    const wanted = layouts.filter(l => options.room.length === 0 || options.room.includes(l.room.name));

    const names = new FileNames();
    const folder = new OutputFolder(options, world);
    const lost = options.room.length > 0 ? [] : roomsMaybeLost(checked, workspace);
    lost.forEach(text => terminal.say(text));
    let worstCode = lost.length > 0 ? worst(code, EXIT.findings) : code;
    for (const { room, ceiling } of wanted) {
        const standing = standingOf(room, foundBehind(room.at.uri, checked, workspace), passedBy(checked), workspace.files.nameOf);
        const [first, ...others] = standingNotice(standing);
        if (first !== undefined) terminal.say(`room ${room.name}: ${first.charAt(0).toLowerCase()}${first.slice(1)}`);
        for (const line of others) terminal.say(`  ${line}`);
        if (!isSound(standing)) worstCode = worst(worstCode, EXIT.findings);
        if (!ceiling) {
            terminal.say(`room ${room.name} cannot be laid out; \`cofferwright check\` shows why`);
            worstCode = worst(worstCode, EXIT.findings);
            continue;
        }
        terminal.progress(`${doing} ${room.name} ...`);
        await setImmediate();
        const files = await make(ceiling, workspace, standing);
        const named = files.map(file => ({ name: names.free(n => nameOf(file, n)), content: file.content }));
        await folder.write(named, addressOf({ job: room.job, rooms: [{ room }] }));
    }
    terminal.progress('');
    if (wanted.length === 0) terminal.say('There is no room in these files.');
    return worst(worstCode, folder.code);
}

/** The wishes one after the other, then the last one with a number. */
function nameOf({ names, ending }: RoomFile, n: number): FileName {
    return fileNameOf(names[n - 1] ?? `${names.at(-1)!}-${n - names.length + 1}`, ending);
}
