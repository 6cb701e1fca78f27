import { TICKS_PER_INCH } from '../../quantity/ticks.ts';
import type { Extent } from '../extent.ts';
import { POINTS_PER_INCH } from '../paper.ts';

const STEPS = 14;
/** At most twice the beam's true size: a board as large as a door tells no more. */
const LARGEST = 2 * POINTS_PER_INCH / TICKS_PER_INCH;

/**
 * The largest scale at which it fits; on paper draftsmen's scales rule, in a pane the pane does. `place`: at a scale, or null where it does not fit.
 * Where the figures alone are wider than the pane it is shown over the edge.
 */
export function largestOf<Placed>(place: (pointsPerTick: number, within: Extent) => Placed | null, area: Extent): Placed {
    let low = 0, high = LARGEST, best = place(LARGEST, area);
    if (best) return best;
    for (let step = 0; step < STEPS; step++) {
        const k = (low + high) / 2;
        const placed = place(k, area);
        if (placed) [low, best] = [k, placed];
        else high = k;
    }
    return best ?? place(LARGEST / 32, { left: 0, top: 0, right: 1e5, foot: 1e5 })!;
}
