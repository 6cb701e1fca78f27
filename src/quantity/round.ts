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

/** The next multiple of `step` at or below. */
export function roundDown(ticks: Ticks, step: Ticks): Ticks {
    if (!(step > 0)) return ticks;
    const over = ticks % step;
    return ticks - over - (over < 0 ? step : 0);
}
