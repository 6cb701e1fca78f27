import type { BoardPlan } from '../../cutting/model.ts';
import type { Alternate } from '../../job/alternate.ts';
import type { ExportFormat, Page, RoomOnPage } from '../../pages/page.ts';
import { isOfHouse, type PaneKind } from '../../pages/kinds.ts';
import { LEAVES, type LeafKind } from '../../pages/leaves/pages.ts';
import { PAGES } from '../../pages/pages.ts';
import { RoomsOnPages } from '../../pages/rooms.ts';
import { Boards, type HouseToCut } from '../../pipeline/boards.ts';
import { inspectClosely } from '../../pipeline/inspect-closely.ts';
import { pricePlans } from '../../pipeline/price-plans.ts';
import { atOnce } from '../../plain/steps.ts';
import { UsageError, type ExitCode } from '../exit-code.ts';
import { LOOKING, solveBy } from '../prove.ts';
import type { World } from '../world.ts';
import { writeRoomFiles, type RoomFilesOptions } from '../room-files.ts';
import type { Workspace } from '../workspace.ts';

/** Those of the editor's panes, and those that are only printed. */
type PrintedKind = Exclude<PaneKind, 'changes'> | LeafKind;
// what changed is told by a command of its own, which knows both states
const { changes: _, ...ofPanes } = PAGES;
const PRINTED: Readonly<Record<PrintedKind, Pick<Page, 'exports' | 'showsBoards'> & { readonly kind?: PaneKind }>> = { ...ofPanes, ...LEAVES };
export const PRINTED_PAGES = Object.keys(PRINTED) as PrintedKind[];
export const PAGE_FORMATS: readonly ExportFormat[] = ['html', 'svg', 'csv'];
export interface PrintOptions extends RoomFilesOptions { readonly page: PrintedKind; readonly format: ExportFormat; readonly quick: boolean }

/** A page of the editor's as a file for every room that is asked for; one for the house, with these rooms alone, where it shows the whole of it. */
export async function print(options: PrintOptions, world: World): Promise<ExitCode> {
    const page = PRINTED[options.page], make = page.exports[options.format];
    if (!make) throw new UsageError(`The page ${options.page} is kept as ${PAGE_FORMATS.filter(format => page.exports[format]).join(' or ')}, not as ${options.format}.`);
    let known: Known | undefined;
    return writeRoomFiles(options, world, 'Printing', async (ceiling, workspace) => {
        known ??= await knownOf(workspace, options, world);
        const { rooms } = known;
        const there = rooms.all().find(({ layout }) => layout.ceiling === ceiling), room = there && rooms.onPage(there);
        if (!room || (page.kind && isOfHouse(page.kind) && room.house[0]!.ceiling !== ceiling)) return [];
        const { name, bytes } = await atOnce(make(room, undefined));
        const dot = name.lastIndexOf('.');
        return [{ names: [name.slice(0, dot)], ending: name.slice(dot + 1), content: bytes }];
    });
}

interface Known { readonly rooms: RoomsOnPages }

/** The rooms that are asked for, and their boards as `boards`, `order` and `estimate` look for them, where the page shows any. */
async function knownOf(workspace: Workspace, { room: names, page, quick }: PrintOptions, world: World): Promise<Known> {
    const files = { all: () => workspace.uris(), content: (uri: string) => workspace.contentOf(uri), reached: (uri: string) => workspace.madeFrom(uri) };
    const ways = { closely: inspectClosely, nameOf: workspace.files.nameOf };
    const picked = names.length === 0 ? {} : { isWanted: (room: { readonly name: string }): boolean => names.includes(room.name) };
    const rooms = new RoomsOnPages(files, { ...ways, ...picked });
    if (!PRINTED[page].showsBoards) return { rooms };
    const all = housesIn(new RoomsOnPages(files, ways)), houses = housesIn(rooms);
    const boards = new Boards(all.map(toCut)), solve = solveBy({ quick }, world);
    world.terminal.progress(LOOKING);
    const found = new Map<string, RoomOnPage['boards']>();
    const before: BoardPlan[] = [], beforePrices: BoardPlan[] = [];
    for (const house of houses) {
        const { layout: { room: { job } }, alternates } = house[0]!;
        const { questions, whole } = boards.of(toCut(house), before);
        const [plan] = await solve(questions);
        before.push(plan);
        const asked: readonly Alternate[] = page === 'estimate' ? alternates : [];
        const forPrices = page === 'estimate' ? await pricePlans(house.map(({ layout }) => layout.room), asked, job, beforePrices, solve) : undefined;
        if (forPrices) beforePrices.push(forPrices.plan);
        found.set(keyOf(house), { plan: whole(plan), ...forPrices && { forPrices } });
    }
    return { rooms: new RoomsOnPages(files, { ...ways, ...picked, boardsOf: house => found.get(keyOf(house)) }) };
}

function housesIn(rooms: RoomsOnPages): (readonly RoomOnPage[])[] {
    const houses = new Map<string, readonly RoomOnPage[]>();
    for (const there of rooms.all()) {
        const house = rooms.onPage(there)?.house;
        if (house && !houses.has(keyOf(house))) houses.set(keyOf(house), house);
    }
    return [...houses.values()];
}

function toCut(house: readonly RoomOnPage[]): HouseToCut {
    return { job: house[0]!.layout.room.job, rooms: house.map(({ layout: { room }, takeOff: { pieces } }) => ({ room, pieces })) };
}

function keyOf(house: readonly RoomOnPage[]): string {
    return house.map(({ layout: { room } }) => room.key).join(' ');
}
