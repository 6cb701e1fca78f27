import { lowReach } from '../ceiling/flanks.ts';
import type { Ceiling, Line } from '../ceiling/model.ts';
import { layoutOf } from '../pipeline/inspect.ts';
import type { Direction } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { matchInOrder } from './in-order.ts';
import type { Coffers, HouseThere, LineChange, LineThere, RoomChange, RoomThere } from './model.ts';
import { pairBy, pairOnly } from './pair-by.ts';

/**
 * Rooms of both states together: of one name; else the only ones whose walls are as long, wherever they are written, and then the only ones that are
 * left of their file, which have another name now.
 */
export function pairRooms(before: readonly RoomThere[], after: readonly RoomThere[]): { readonly before?: RoomThere; readonly after?: RoomThere }[] {
    const here = pairBy(before, after, ({ room }) => `${room.at.uri} ${room.name}`), moved = pairBy(here.before, here.after, ({ room }) => room.name);
    const asLarge = pairOnly(moved.before, moved.after, wallsOf), inFile = pairOnly(asLarge.before, asLarge.after, ({ room }) => room.at.uri);
    const was = new Map([here, moved, asLarge, inFile].flatMap(({ pairs }) => pairs.map(pair => [pair.after, pair.before])));
    return [...after.map(one => ({ after: one, ...was.has(one) && { before: was.get(one)! } })), ...inFile.before.map(one => ({ before: one }))];
}

function wallsOf({ room }: RoomThere): string | undefined {
    const { ceiling } = layoutOf(room);
    return ceiling && ceiling.walls.map(({ name, length }) => `${name} ${length}`).join(', ');
}

/** There in both states, and laid out in one alone: what of it is otherwise nobody can tell. */
export function isHalfKnown({ before, after }: Pick<RoomChange, 'before' | 'after'>): boolean {
    return before !== undefined && after !== undefined && (before.takeOff === undefined) !== (after.takeOff === undefined);
}

/** What is otherwise of a room's ceiling: walls, lines, coffers; nothing of one that is known in one state alone. */
export function roomChange({ before, after }: { readonly before?: RoomThere; readonly after?: RoomThere }): RoomChange {
    const isUnknown = isHalfKnown({ ...before && { before }, ...after && { after } }), known = isUnknown ? undefined : { before, after };
    const was = known?.before && layoutOf(known.before.room).ceiling, is = known?.after && layoutOf(known.after.room).ceiling;
    const walls = wallChanges(was, is), lines = (['north-south', 'east-west'] as const).flatMap(runs => lineChanges(was, is, runs));
    const coffers = coffersOf(was), now = coffersOf(is), isOther = JSON.stringify(coffers) !== JSON.stringify(now);
    return {
        ...before && { before }, ...after && { after }, name: (after ?? before)!.room.name,
        ...before && after && before.room.name !== after.room.name && { renamedFrom: before.room.name },
        walls, lines, ...isOther && { coffers: { before: coffers, after: now } },
        isSame: Boolean(before && after) && !isUnknown && walls.length === 0 && lines.length === 0 && !isOther,
    };
}

function wallChanges(before: Ceiling | undefined, after: Ceiling | undefined): RoomChange['walls'] {
    const lengths = (ceiling: Ceiling | undefined): Map<string, Ticks> => new Map(ceiling?.walls.map(({ name, length }) => [name, length]));
    const was = lengths(before), is = lengths(after);
    return [...new Set([...is.keys(), ...was.keys()])].filter(wall => was.get(wall) !== is.get(wall)).map(wall => {
        const old = was.get(wall), now = is.get(wall);
        return { wall, ...old !== undefined && { before: old }, ...now !== undefined && { after: now } };
    });
}

function lineChanges(before: Ceiling | undefined, after: Ceiling | undefined, runs: Direction): LineChange[] {
    const was = linesOf(before, runs), is = linesOf(after, runs);
    const changes = matchInOrder(was.map(line => line.center), is.map(line => line.center)).map(([i, j]): LineChange => {
        const old = i === undefined ? undefined : was[i]!, now = j === undefined ? undefined : is[j]!;
        return { runs, ...old && { before: old }, ...now && { after: now }, moved: old && now ? now.center - old.center : 0 };
    });
    return changes.filter(({ before: old, after: now }) => JSON.stringify(old) !== JSON.stringify(now));
}

function linesOf(ceiling: Ceiling | undefined, runs: Direction): LineThere[] {
    return (ceiling?.lines ?? []).filter(line => line.runs === runs).map(lineThere).sort((a, b) => a.center - b.center);
}

function lineThere(line: Line): LineThere {
    const { name, from, to, through, section } = line;
    return {
        name, center: Math.round(line.low + lowReach(line)), from, to, through,
        beam: section.profile.label, depth: section.depth.ticks, width: section.outerWidth.ticks,
    };
}

function coffersOf(ceiling: Ceiling | undefined): Coffers {
    const all = ceiling?.coffers ?? [];
    const range = (sizes: readonly Ticks[]): [Ticks, Ticks] => (sizes.length === 0 ? [0, 0] : [Math.min(...sizes), Math.max(...sizes)]);
    return { count: all.length, acrossNorth: range(all.map(({ west, east }) => east - west)), acrossEast: range(all.map(({ north, south }) => south - north)) };
}

/** Houses of both states together: under the same job; else of the same title; else with a room in common; else, without a job, with a file in common. */
export function pairHouses<House extends Pick<HouseThere, 'job' | 'rooms'>>(before: readonly House[], after: readonly House[]): { readonly before?: House; readonly after?: House }[] {
    const left = [...before], found = new Map<House, House>();
    const alike: ((was: House, is: House) => boolean)[] = [
        (was, is) => was.job.at !== undefined && was.job.at.uri === is.job.at?.uri,
        (was, is) => was.job.title !== undefined && was.job.title.value === is.job.title?.value,
        (was, is) => was.rooms.some(({ room }) => is.rooms.some(one => one.room.name === room.name && one.room.at.uri === room.at.uri)),
        (was, is) => was.rooms.some(({ room }) => is.rooms.some(one => one.room.name === room.name)),
        (was, is) => !was.job.at && !is.job.at && was.rooms.some(({ room }) => is.rooms.some(one => one.room.at.uri === room.at.uri)),
    ];
    for (const isAlike of alike) for (const is of after) {
        const at = found.has(is) ? -1 : left.findIndex(was => isAlike(was, is));
        if (at >= 0) found.set(is, left.splice(at, 1)[0]!);
    }
    return [...after.map(is => ({ after: is, ...found.has(is) && { before: found.get(is)! } })), ...left.map(was => ({ before: was }))];
}
