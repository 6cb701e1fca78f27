import { grouped } from '../../plain/groups.ts';
import type { Point } from '../../plane/point.ts';
import type { Shift } from '../calendar.ts';
import type { PutUp } from '../model.ts';
import { hop } from './stretch.ts';

/**
 * How far ladders are moved and how often: of one crew as the order has it; of several all their ladders together, each from step to step in its days, of which
 * nobody says that it is the least.
 */
export function ladderMoves({ steps, moves }: PutUp, shifts: ReadonlyMap<number, Shift> | undefined): PutUp['moves'] {
    const crews = [...grouped(steps, ({ number }) => shifts?.get(number)?.crew ?? 1).values()];
    if (crews.length < 2) return moves;
    const far = crews.flatMap(own => hopsOf([...own].sort((a, b) => shifts!.get(a.number)!.from.compare(shifts!.get(b.number)!.from)).map(({ at }) => at)));
    return { count: far.length, distance: far.reduce((sum, each) => sum + each, 0), atLeast: null };
}

/** From place to place, where it is moved at all. */
export function hopsOf(places: readonly Point[]): number[] {
    return places.slice(1).map((at, i) => hop(places[i]!, at)).filter(far => far > 0);
}
