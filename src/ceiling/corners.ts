import type { Direction } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Line, Trouble } from './model.ts';

/** How a side ends: in a miter, square and past the other side, or square against it (or against band or wall). */
type SideEnd = 'mitered' | 'past' | 'stops';

/** The end of a side of `line` in the corner with a side of the crossing line (null: at band or wall, where it ends square). */
function sideEnd(line: Line, crossing: Line | null): SideEnd {
    if (!crossing) return 'stops';
    const sides = line.section.profile.sides;
    if (sides?.corners.value !== 'butted') return 'mitered';
    return pastDirection(line, crossing) === line.runs ? 'past' : 'stops';
}

/** Where the job does not name the sides that run past, they run past in the direction in which the bottoms run through. */
function pastDirection(line: Line, crossing: Line): Direction {
    return line.section.profile.sides?.past?.value ?? (line.through ? line.runs : crossing.runs);
}

/**
 * How far the back of a side reaches past the face of the coffer at one end: by the thickness of the side that it meets,
 * where it is mitered with it or runs past it. (The back of a mitered side is its long point.)
 */
export function sideReach(line: Line, crossing: Line | null): Ticks {
    return crossing && sideEnd(line, crossing) !== 'stops' ? crossing.section.sideThickness.ticks : 0;
}

/** Lines that cross must have the same corners: one told each time a profile's corners differ from those it meets. */
export function cornerTroubles(ns: readonly Line[], ew: readonly Line[]): Trouble[] {
    const troubles: Trouble[] = [];
    const told = new Set<unknown>();
    for (const a of ew) for (const b of ns) {
        const mine = a.section.profile.sides!, theirs = b.section.profile.sides!;
        if (told.has(mine)) continue;
        const differ = mine.corners.value !== theirs.corners.value
            || mine.corners.value === 'butted' && pastDirection(a, b) !== pastDirection(b, a);
        if (!differ) continue;
        told.add(mine);
        const words = (sides: typeof mine): string => `${sides.corners.value}${sides.past ? ` past ${sides.past.value}` : ''}`;
        troubles.push({
            kind: 'not-supported', what: `corners of line ${a.name} (${words(mine)}) other than those of line ${b.name} (${words(theirs)})`,
            instead: 'the same corners for lines that cross', at: (mine.past ?? mine.corners).at,
        });
    }
    return troubles;
}
