import type { Ceiling } from '../../ceiling/model.ts';
import type { Room, RoomBefore } from '../../job/model.ts';
import { layoutOf, takeOffOf } from '../../pipeline/inspect.ts';
import { kept, MOST_ROOMS } from '../../plain/kept.ts';
import { calendarOf, type Calendar } from '../../putup/calendar.ts';
import { hoursOf } from '../../putup/hours.ts';
import { putUpOf } from '../../putup/put-up.ts';

/** The calendar of a room on which all that it waits for is reckoned; kept as long as its ceiling is the same. */
export const daysOf: (ceiling: Ceiling) => Calendar | undefined = kept((ceiling: Ceiling) => {
    for (const room of roomsBefore(ceiling.room)) {
        const other = layoutOf(room).ceiling;
        if (other) ownDays(other);
    }
    return ownDays(ceiling);
}, MOST_ROOMS);

/** Rooms that a room waits for, directly or through others, each after those that it waits for itself. Nothing recurses. */
export function roomsBefore(room: Room): Room[] {
    const done = new Set<Room>(), path: { readonly room: Room; readonly left: Room[] }[] = [{ room, left: waitedFor(room) }];
    const begun = new Set([room]);
    while (path.length > 0) {
        const { room: on, left } = path.at(-1)!, next = left.pop();
        if (!next) { done.add(on); path.pop(); } else if (!begun.has(next)) { begun.add(next); path.push({ room: next, left: waitedFor(next) }); }
    }
    return [...done].filter(each => each !== room);
}

function waitedFor({ putUp }: Room): Room[] {
    return (putUp?.waits ?? []).flatMap(wait => (wait.kind === 'room' ? roomOf(wait.room.value) ?? [] : [])).reverse();
}

function roomOf(before: RoomBefore): Room | undefined {
    return 'room' in before ? before.room : undefined;
}

/** The day on which another room is done; undefined where nobody knows: it is not laid out, or nothing of it is timed, or it waits for this one. */
export function doneOn(before: RoomBefore): number | undefined {
    const room = roomOf(before), ceiling = room && !room.broken ? layoutOf(room).ceiling : undefined;
    return ceiling && (ownDays(ceiling)?.done ?? undefined);
}

/** On the days of the rooms before it, which are known by then. */
const ownDays: (ceiling: Ceiling) => Calendar | undefined = kept((ceiling: Ceiling) => {
    const putUp = putUpOf(ceiling), hours = hoursOf({ ceiling, takeOff: takeOffOf(ceiling) }, putUp);
    return hours && calendarOf(putUp, hours, ceiling.room.putUp?.crews.value ?? 1, doneOn);
});
