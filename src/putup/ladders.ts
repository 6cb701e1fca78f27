import { grouped } from '../plain/groups.ts';
import { distance } from '../plane/point.ts';
import type { Shift } from './calendar.ts';
import type { PutUp } from './model.ts';

/** How far ladders are moved and how often: of one crew as the order has it; of several all their ladders together, each from step to step in its days. */
export function ladderMoves({ steps, moves }: PutUp, shifts: ReadonlyMap<number, Shift> | undefined): PutUp['moves'] {
    const crews = [...grouped(steps, ({ number }) => shifts?.get(number)?.crew ?? 1).values()];
    if (crews.length < 2) return moves;
    const far = crews.flatMap(own => {
        const inTime = [...own].sort((a, b) => shifts!.get(a.number)!.from.compare(shifts!.get(b.number)!.from));
        return inTime.slice(1).map((step, i) => distance(inTime[i]!.at, step.at));
    }).filter(each => each > 0);
    return { count: far.length, distance: Math.round(far.reduce((sum, each) => sum + each, 0)) };
}
