import type { ExportFormat } from '../../pages/page.ts';
import type { PaneKind } from '../../pages/kinds.ts';
import { PAGES } from '../../pages/pages.ts';
import { RoomsOnPages } from '../../pages/rooms.ts';
import { UsageError, type ExitCode } from '../exit-code.ts';
import type { World } from '../input.ts';
import { writeRoomFiles, type RoomFilesOptions } from '../room-files.ts';
import type { Workspace } from '../workspace.ts';

export const PRINTED_PAGES = Object.keys(PAGES) as PaneKind[];
export const PAGE_FORMATS: readonly ExportFormat[] = ['html', 'svg', 'csv'];
export interface PrintOptions extends RoomFilesOptions { readonly page: PaneKind; readonly format: ExportFormat }

/** A page of the editor's as a file for every room; one for the house where it shows the whole of it. */
export async function print(options: PrintOptions, world: World): Promise<ExitCode> {
    const page = PAGES[options.page]!, make = page.exports[options.format];
    if (!make) throw new UsageError(`The page ${options.page} is kept as ${PAGE_FORMATS.filter(format => page.exports[format]).join(' or ')}, not as ${options.format}.`);
    return writeRoomFiles(options, world, 'Printing', async (ceiling, workspace) => {
        const rooms = roomsOf(workspace);
        const there = rooms.all().find(({ layout }) => layout.ceiling === ceiling), room = there && rooms.onPage(there);
        if (!room || (page.ofHouse && room.house[0]!.ceiling !== ceiling)) return [];
        const { name, bytes } = await make(room, undefined);
        const dot = name.lastIndexOf('.');
        return [{ names: [name.slice(0, dot)], ending: name.slice(dot + 1), content: bytes }];
    });
}

function roomsOf(workspace: Workspace): RoomsOnPages {
    return new RoomsOnPages({ all: () => workspace.uris(), content: uri => workspace.contentOf(uri), reached: uri => workspace.madeFrom(uri) });
}
