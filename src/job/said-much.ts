import type { Alternate } from './alternate.ts';
import type { Room, Spacing, TooMuch } from './model.ts';
import { outlineOf } from './outline.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';

/**
 * How much is laid out of one file: laid out, taken off and put together dry, a coffer takes some milliseconds. The coffered ceiling of a ballroom
 * has some hundred; a room may have so many, and all rooms of a file together.
 */
export const MOST_COFFERS = 400;
export const MOST_SPACERS = 4000;
/** No direction has more lines: see division.ts. */
const MOST_ONE_WAY = 41;

/** The rooms of a file, in their order. One with which they would be too much is told so, and does not count for those after it. */
export function withinLimits(rooms: readonly Room[]): readonly Room[] {
    const limit = limiter('rooms');
    return same(rooms, rooms.map(limit));
}

/** The same of the rooms that the alternates of a file make, which are laid out beside its own. */
export function alternatesWithinLimits(alternates: readonly Alternate[]): readonly Alternate[] {
    const limit = limiter('alternates');
    return same(alternates, alternates.map(alternate => {
        const rooms = same(alternate.rooms, alternate.rooms.map(changed => {
            const room = limit(changed.room);
            return room === changed.room ? changed : { ...changed, room };
        }));
        return rooms === alternate.rooms ? alternate : { ...alternate, rooms };
    }));
}

/** What is not changed stays the same object: results are kept by that. */
function same<T>(before: readonly T[], now: readonly T[]): readonly T[] {
    return now.every((each, i) => each === before[i]) ? before : now;
}

function limiter(of: TooMuch['of']): (room: Room) => Room {
    let coffers = 0, spacers = 0;
    return room => {
        const more = isCounted(room) ? coffersSaid(room) : Math.min(coffersSaid(room), MOST_COFFERS), hung = Math.min(spacersSaid(room), MOST_SPACERS);
        // more than a room may have by itself is told of the room
        if (more > MOST_COFFERS && isCounted(room)) return room;
        if (coffers + more > MOST_COFFERS) return { ...room, tooMuch: { of, what: 'coffers', count: coffers + more, most: MOST_COFFERS } };
        if (spacers + hung > MOST_SPACERS) return { ...room, tooMuch: { of, what: 'spacers', count: Math.ceil(spacers + hung), most: MOST_SPACERS } };
        coffers += more;
        spacers += hung;
        return room;
    };
}

/** As many coffers as a room's text asks for, about: sizes are taken at the middle of what is said. 0 where nothing can be laid out. */
function coffersSaid(room: Room): number {
    const { across, down } = waysOf(room);
    return across * down;
}

/** Whether the text says the number itself. */
function isCounted({ grid }: Room): boolean {
    return grid?.north?.by !== 'size' && grid?.east?.by !== 'size';
}

/** As many spacers as hang in all of its lines, about, as if these ran through. */
function spacersSaid(room: Room): number {
    const { across, down, width, length } = waysOf(room);
    const every = Math.min(...[room.grid?.beams, ...room.lines.map(line => line.beams)].map(beams => beams?.value.spacers?.every.value ?? Infinity));
    if (!(every > 0)) return 0;
    return Math.max(0, across - 1) * length / every + Math.max(0, down - 1) * width / every;
}

function waysOf(room: Room): { across: number; down: number; width: Ticks; length: Ticks } {
    const outline = outlineOf(room);
    if (!outline || !('corners' in outline)) return { across: 0, down: 0, width: 0, length: 0 };
    const { width, length } = outline;
    return { across: oneWay(room.grid?.north, width), down: oneWay(room.grid?.east, length), width, length };
}

function oneWay(spacing: Spacing | undefined, room: Ticks): number {
    if (!spacing) return 0;
    if (spacing.by === 'number') return count(spacing.coffers.value);
    if (spacing.by === 'lines') return count(spacing.centers.length + 1);
    const { least, most } = spacing.size.value;
    return count(Math.max(1, Math.round(room / Math.max((least + most) / 2, TICKS_PER_INCH))));
}

function count(coffers: number): number {
    return coffers >= 1 && coffers <= MOST_ONE_WAY ? Math.floor(coffers) : 0;
}
