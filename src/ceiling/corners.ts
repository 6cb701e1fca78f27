import type { Direction } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { thicknessOfSides } from './flanks.ts';
import type { Line, Trouble } from './model.ts';

/** How a side ends: in a miter, square and past the other side, or square against it (or against band or wall). */
type SideEnd = 'mitered' | 'past' | 'stops';

/** The end of a side of `line` in the corner with a side of a line that is as deep. */
function sideEnd(line: Pick<Line, 'section' | 'runs'>, through: Direction): SideEnd {
    const sides = line.section.profile.sides;
    if (sides?.corners.value !== 'butted') return 'mitered';
    return pastDirection(line, through) === line.runs ? 'past' : 'stops';
}

/** Where the job does not name the sides that run past, they run past in the direction in which the bottoms run through. */
function pastDirection({ section }: Pick<Line, 'section'>, through: Direction): Direction {
    return section.profile.sides?.past?.value ?? through;
}

/**
 * How far the backs of the two sides that are broken by a line reach past the faces of their coffers, together: by the thickness of its sides,
 * where they are mitered with these or run past them. (The back of a mitered side is its long point.)
 */
export function sideReach(line: Pick<Line, 'section' | 'runs'>, crossing: Pick<Line, 'section'>, through: Direction): Ticks {
    return sideEnd(line, through) !== 'stops' ? thicknessOfSides(crossing.section) : 0;
}

/** Lines that meet flush must have the same corners: one told each time a profile's corners differ from those it meets. */
export function cornerTroubles(lines: readonly Pick<Line, 'name' | 'section' | 'passes'>[], through: Direction): Trouble[] {
    const troubles: Trouble[] = [];
    const told = new Set<unknown>(), named = new Map(lines.map(line => [line.name, line]));
    for (const a of [...lines].reverse()) for (const { of, relation } of a.passes) {
        const b = named.get(of)!, mine = a.section.profile.sides, theirs = b.section.profile.sides;
        if (!mine || !theirs || relation !== 'flush' || told.has(mine) || told.has(theirs)) continue;
        const differ = mine.corners.value !== theirs.corners.value
            || mine.corners.value === 'butted' && pastDirection(a, through) !== pastDirection(b, through);
        if (!differ) continue;
        told.add(mine);
        const words = (sides: typeof mine): string => `${sides.corners.value}${sides.past ? ` past ${sides.past.value}` : ''}`;
        troubles.push({
            kind: 'not-supported', what: `corners of line ${a.name} (${words(mine)}) other than those of line ${b.name} (${words(theirs)})`,
            because: 'the corner where they cross would be both', instead: 'the same corners for lines that meet', at: (mine.past ?? mine.corners).at,
        });
    }
    return troubles;
}
