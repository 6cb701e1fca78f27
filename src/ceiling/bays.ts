import type { Passing } from '../arrangement/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { flankOf, lowReach, sectionAt, sidesOf } from './flanks.ts';
import type { Line } from './model.ts';

/** One bay of a line: its stretch between two lines that it meets, or one of them and what it ends at. What dies into it bounds none. */
export interface Bay {
    /** Counted from the line's west or north end, from 1. */
    readonly number: number;
    /** Faces of what stands at either end, on the line's center. */
    readonly start: Ticks; readonly end: Ticks;
    /** How far these move along the line for every tick across it. */
    readonly leans: readonly [number, number];
}

export function baysOf({ faces: [first, last], leans: [atFirst, atLast], passes }: Pick<Line, 'faces' | 'leans' | 'passes'>): Bay[] {
    const bounds = passes.filter(({ relation }) => relation !== 'over');
    return [...bounds, undefined].map((after, i) => {
        const before = bounds[i - 1];
        return {
            number: i + 1, start: before ? Math.round(before.high) : first, end: after ? Math.round(after.low) : last,
            leans: [before ? before.lean : atFirst, after ? after.lean : atLast],
        };
    });
}

/** The bay that something begins in which begins at this place along the line. */
export function bayAt({ passes }: Pick<Line, 'passes'>, place: number): number {
    return passes.filter(({ relation, at }) => relation !== 'over' && at <= place).length + 1;
}

/**
 * The bays that a part begins in: sides on one side of the line are broken by what crosses it, and by what ends at that side; bottoms and
 * blocking are cut where another's run through, or at a deeper beam.
 */
export function bayStarts({ passes }: Pick<Line, 'passes'>, of: Broken): number[] {
    const bounds = passes.filter(({ relation }) => relation !== 'over');
    return [1, ...bounds.flatMap((pass, i) => (breaks(pass, of) ? [i + 2] : []))];
}

/** What of a line may be broken by what it meets: its sides on one side of it, or its bottom and blocking. */
type Broken = 'left' | 'right' | 'bottom';

export function breaks({ relation, stem, cuts }: Passing, of: Broken): boolean {
    return of === 'bottom' ? cuts : relation !== 'over' && (stem === null || stem === of);
}

/** The middle of the inside of a line, across it; half a tick is left away. */
export function centerOf(line: Pick<Line, 'low' | 'section' | 'otherSide' | 'runs'>): Ticks {
    return Math.floor(line.low + lowReach(line));
}

/** Where the channel between the sides begins. */
export function channelLow(line: Line): Ticks {
    return line.low + sectionAt(line, flankOf(sidesOf(line.runs)[0])).sideThickness.ticks;
}

/**
 * Where the bottom lies, in the middle of what it goes up into: what it is narrower is on both sides, an odd tick on the low side; of one under the sides
 * in the middle of the beam.
 */
export function bottomLow(line: Line): Ticks {
    const { section: { bottomWidth, channelWidth, outerWidth, profile: { bottom } } } = line, low = sectionAt(line, flankOf(sidesOf(line.runs)[0]));
    if (!channelWidth) return line.low + Math.ceil((outerWidth.ticks - bottomWidth.ticks) / 2);
    const letIn = bottom?.place.value === 'in-rabbets' ? low.profile.sides?.rabbet?.value.width.ticks ?? 0 : 0;
    return channelLow(line) - letIn + Math.ceil((channelWidth.ticks - bottomWidth.ticks) / 2);
}
export function bottomHigh(line: Line): Ticks {
    return bottomLow(line) + line.section.bottomWidth.ticks;
}
