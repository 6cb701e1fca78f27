import { csvCutList } from '../../report/cut-list/csv.ts';
import { humanCutList } from '../../report/cut-list/human.ts';
import { jsonCutList } from '../../report/cut-list/json.ts';
import { isSound } from '../../pipeline/standing.ts';
import type { House } from '../../report/house.ts';
import { EXIT, UsageError, worst, type ExitCode } from '../exit-code.ts';
import { housesOf, isSound as isWhole, roomsMaybeLost } from '../houses.ts';
import { once, openAsked, type Asked } from '../input.ts';
import type { World } from '../world.ts';
import type { Files } from '../../report/look.ts';
import type { Workspace } from '../workspace.ts';

export const LIST_FORMATS = ['human', 'json', 'csv'] as const;
export interface ListOptions extends Asked {
    readonly format: (typeof LIST_FORMATS)[number];
    /** Only these rooms; all where none is named. */
    readonly room: readonly string[];
}

/** Every piece, for the saw. */
export async function cutList(options: ListOptions, world: World): Promise<ExitCode> {
    const { houses, files, code } = await housesAsked(options, world);
    const { terminal } = world;
    switch (options.format) {
        case 'human': terminal.result(humanCutList(houses, terminal.paint)); break;
        case 'json': terminal.result(jsonCutList(houses, files)); break;
        case 'csv': terminal.result(csvCutList(houses, files)); break;
    }
    return worst(code, isWhole(houses) ? EXIT.clean : EXIT.findings);
}

export interface HousesAsked { readonly houses: House[]; readonly all: House[]; readonly files: Files; readonly workspace: Workspace; readonly code: ExitCode }

/**
 * The houses of the files that were asked for, and `all` of them where only some rooms are wanted. `closely`: what the dry fit finds is among
 * what is wrong with them.
 */
export function housesAsked(options: ListOptions, world: World, { closely = true } = {}): Promise<HousesAsked> {
    return once('houses', world, heard => housesIn(options, heard, closely));
}

async function housesIn(options: ListOptions, world: World, closely: boolean): Promise<HousesAsked> {
    const { workspace, code } = await openAsked(options, world);
    const checked = await workspace.check({ closely, forHouses: true });
    const all = housesOf(checked, workspace);
    const houses = onlyRooms(all, options.room);
    const lost = options.room.length > 0 ? [] : roomsMaybeLost(checked, workspace);
    lost.forEach(text => world.terminal.say(text));
    if (houses.length === 0) world.terminal.say('There is no room in these files.');
    const broken = houses.flatMap(h => h.rooms).filter(r => !r.takeOff || !isSound(r.standing));
    if (broken.length > 0) world.terminal.say(`${broken.map(r => `room ${r.room.name}`).join(', ')}: run \`cofferwright check\` to see what has to be fixed first.`);
    const twice = houses.flatMap(namedTwice);
    twice.forEach(name => world.terminal.say(`Two rooms of one house are called ${name}: their pieces have the same names. Rename one, or list one file at a time.`));
    return { houses, all, files: workspace.files, workspace, code: twice.length + lost.length > 0 ? worst(code, EXIT.findings) : code };
}

function namedTwice({ rooms }: House): string[] {
    const names = rooms.map(r => r.room.name);
    return [...new Set(names.filter((name, i) => names.indexOf(name) !== i))];
}

/** The houses with the named rooms alone, and the alternates that change one of them. Throws a UsageError for a room that is in none of them. */
function onlyRooms(houses: readonly House[], names: readonly string[]): House[] {
    if (names.length === 0) return [...houses];
    const known = houses.flatMap(h => h.rooms.map(r => r.room.name));
    const unknown = names.filter(name => !known.includes(name));
    if (unknown.length > 0) throw new UsageError(`There is no room ${unknown.join(', ')} in these files; there is ${known.join(', ') || 'none'}`);
    return houses.map(house => ({
        ...house, picked: true, alternates: house.alternates.filter(({ rooms }) => rooms.some(({ instead }) => names.includes(instead.name))),
        rooms: house.rooms.filter(r => names.includes(r.room.name)),
    })).filter(house => house.rooms.length > 0);
}
