import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';

/** A row of fasteners at most `every` apart, one at each end. */
export function inRow(length: Ticks, every: Ticks): number {
    return every > 0 ? Math.ceil(length / every) + 1 : 0;
}

/** Wider blocking takes two screws side by side. Common practice, no source. */
export const ONE_SCREW_UP_TO: Ticks = 3 * TICKS_PER_INCH;
