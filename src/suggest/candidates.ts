import type { Direction } from '../job/model.ts';
import { compareEach } from '../plain/order.ts';
import type { Option } from './options.ts';
import { gradeOf, shapeOf } from './shape.ts';

/** A grid for the room, not laid out yet. */
export interface Candidate { readonly across: Option; readonly down: Option; readonly through: Direction }
/** How the room is divided now, for which grid is nearer to it. */
export interface Now { readonly across: number; readonly down: number; readonly through: Direction }

/** Every grid of these divisions, one for each direction that may run through where lines cross. */
export function candidatesOf(across: readonly Option[], down: readonly Option[], now: Now, mostCoffers: number): Candidate[] {
    const other: Direction = now.through === 'north-south' ? 'east-west' : 'north-south';
    return across.flatMap(a => down.flatMap(d => {
        if (a.coffers * d.coffers > mostCoffers) return [];
        const ways = a.coffers > 1 && d.coffers > 1 ? [now.through, other] : [now.through];
        return ways.map(through => ({ across: a, down: d, through }));
    }));
}

export function isClear({ across, down }: Candidate): boolean {
    return across.blocked.length === 0 && down.blocked.length === 0;
}

/** The best first, by plain geometry: how equal and square, how much is nearer than it should be, how near to the grid as it is. */
export function inOrder(candidates: readonly Candidate[], now: Now): Candidate[] {
    return candidates.map((candidate, i) => ({ candidate, figures: [...quickFigures(candidate, now), i] }))
        .sort((a, b) => compareEach(a.figures, b.figures)).map(({ candidate }) => candidate);
}

function quickFigures({ across, down, through }: Candidate, now: Now): number[] {
    const shape = shapeOf(across.sizes.flatMap(width => down.sizes.map(length => ({ width, length }))));
    const away = Math.abs(across.coffers - now.across) + Math.abs(down.coffers - now.down);
    return [gradeOf(shape), across.spoiled + down.spoiled, away, through === now.through ? 0 : 1, shape.unequal + shape.offSquare];
}
