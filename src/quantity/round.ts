import type { Ticks } from './ticks.ts';

/**
 * The nearest multiple of `step`, a half away from zero: 1/64" is cut as 1/32" where the tape has thirty-seconds.
 * Where the step is no positive number there is nothing to round to, and the length comes back as it is.
 */
export function roundTo(ticks: Ticks, step: Ticks): Ticks {
    if (!(step > 0)) return ticks;
    const size = Math.abs(ticks);
    const over = size % step;
    const rounded = size - over + (2 * over >= step ? step : 0);
    return ticks < 0 ? 0 - rounded : rounded;
}

/** The next multiple of `step` at or above. */
export function roundUp(ticks: Ticks, step: Ticks): Ticks {
    return 0 - roundDown(0 - ticks, step);
}

/** The next multiple of `step` at or below. What is short of one by less than a sum of fractions may be off is at it. */
export function roundDown(ticks: Ticks, step: Ticks): Ticks {
    if (!(step > 0)) return ticks;
    const over = ticks % step, above = over < 0 ? over + step : over;
    return ticks - over + (above >= step - HAIR ? step : 0) - (over < 0 ? step : 0);
}
/** A sixteenth of a tick, which is 1/16256 of an inch: far less than anything that is meant, more than corners of slanted lines are rounded by. */
const HAIR = 1 / 16;
