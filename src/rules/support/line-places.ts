import { lowReach } from '../../ceiling/flanks.ts';
import type { Ceiling, Line } from '../../ceiling/model.ts';
import type { Given } from '../../provenance/source.ts';
import type { Ticks } from '../../quantity/ticks.ts';

/** The words that say where a line along the compass stands, and what it takes there to move it to the east or south: more, or less. */
interface PlaceSaid { readonly given: Given<Ticks>; readonly sign: 1 | -1 }

/** Undefined of a line that stands where the grid divides the room, or is placed from another line. */
export function placeSaidOf(line: Line, { room, width, length }: Ceiling): PlaceSaid | undefined {
    const { name, runs } = line, whole = runs === 'north-south' ? width : length, center = line.low + lowReach(line);
    const spacing = runs === 'north-south' ? room.grid.north : room.grid.east;
    const own = room.lines.findLast(spec => spec.name === name)?.place?.by;
    const all = own ? [own] : spacing?.by === 'lines' ? spacing.centers : [];
    const near = (place: Ticks): boolean => Math.abs(place - center) <= 1;
    for (const given of all) {
        if (near(given.value)) return { given, sign: 1 };
        if (near(whole - given.value)) return { given, sign: -1 };
    }
    return undefined;
}
