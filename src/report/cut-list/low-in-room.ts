import { layoutOf } from '../../pipeline/inspect.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { lowSpacers } from '../../survey/low-spacers.ts';
import type { House } from '../house.ts';

/** Spacers of some rooms that a low ceiling wants lower than the rest, by their names, with how high. */
export function lowIn(rooms: House['rooms']): ReadonlyMap<string, Ticks> {
    return new Map(rooms.flatMap(({ room, takeOff }) => {
        const ceiling = room.survey && takeOff ? layoutOf(room).ceiling : undefined;
        return ceiling ? [...lowSpacers(ceiling, takeOff!)] : [];
    }));
}
