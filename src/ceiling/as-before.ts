import type { Room } from '../job/model.ts';
import { MOST_ROOMS } from '../plain/kept.ts';
import { sameData } from '../plain/same-data.ts';
import type { Ceiling, DividedRoom, Layout } from './model.ts';

/** A room and an alternate of it have one name. */
const MOST_OF_A_NAME = 4;

const lastOf = new Map<string, Layout[]>(), before = new WeakMap<Ceiling, Ceiling>();

/**
 * Lays a room out, or says again what came of it before its last change, where only its survey is another now: whoever types readings does not have the beams
 * laid out and taken off again at each digit. Rooms that nobody surveyed are laid out as ever.
 */
export function laidOutAsBefore(room: Room, layOut: (room: Room) => Layout): Layout {
    if (!room.survey) return layOut(room);
    const name = `${room.at.uri} ${room.name}`, known = lastOf.get(name) ?? [];
    const like = known.find(layout => sameData(withoutSurvey(layout.room), withoutSurvey(room)));
    const layout = like ? asBefore(like, room) : layOut(room);
    lastOf.delete(name);
    lastOf.set(name, [layout, ...known.filter(each => each !== like)].slice(0, MOST_OF_A_NAME));
    if (lastOf.size > MOST_ROOMS) lastOf.delete(lastOf.keys().next().value!);
    return layout;
}

/** No beam and no piece comes from how level the ceiling is that they hang under. */
function withoutSurvey(room: Room): Omit<Room, 'survey'> {
    const { survey: _, ...rest } = room;
    return rest;
}

function asBefore(like: Layout, room: Room): Layout {
    if (!like.ceiling) return { ...like, room };
    // divided as that one was: but for the survey they say the same
    const ceiling: Ceiling = { ...like.ceiling, room: room as DividedRoom };
    before.set(ceiling, unchanged(like.ceiling));
    return { ...like, room, ceiling };
}

/** The ceiling whose pieces are those of this one: itself, or as it was laid out before nothing but its survey changed. */
export function unchanged(ceiling: Ceiling): Ceiling {
    return before.get(ceiling) ?? ceiling;
}
