import type { Measure, Tolerance, ToleranceTerm } from './measure.ts';
import type { Ticks } from './ticks.ts';

/** A length without error. */
export function exactly(ticks: Ticks): Measure {
    return { ticks, tolerance: [] };
}

/** A length that one cause may push up or down by `reach` ticks. */
export function within(ticks: Ticks, cause: string, reach: number): Measure {
    return { ticks, tolerance: reach === 0 ? [] : [{ cause, reach }] };
}

export function plus(a: Measure, b: Measure): Measure {
    return { ticks: a.ticks + b.ticks, tolerance: merge(a.tolerance, b.tolerance, 1) };
}

/** The difference; what both owe to the same cause cancels. */
export function minus(a: Measure, b: Measure): Measure {
    return { ticks: a.ticks - b.ticks, tolerance: merge(a.tolerance, b.tolerance, -1) };
}

/** The same length `n` times, each time off the same way: `n` boards ripped at one fence setting. */
export function times(a: Measure, n: number): Measure {
    return { ticks: a.ticks * n + 0, tolerance: n === 0 ? [] : a.tolerance.map(t => ({ cause: t.cause, reach: t.reach * n })) };
}

/** Every cause at its worst at once, in ticks. */
export function worstCase(tolerance: Tolerance): number {
    return tolerance.reduce((sum, t) => sum + Math.abs(t.reach), 0);
}

/** Root of the sum of squares, in ticks: what independent causes come to together most of the time. */
export function rootSumSquare(tolerance: Tolerance): number {
    return Math.hypot(...tolerance.map(t => t.reach));
}

/** Both lists are sorted by cause, and so is what comes out. */
function merge(a: Tolerance, b: Tolerance, sign: 1 | -1): Tolerance {
    const reach = new Map<string, number>(a.map(t => [t.cause, t.reach]));
    for (const t of b) reach.set(t.cause, (reach.get(t.cause) ?? 0) + sign * t.reach);
    return [...reach]
        .map(([cause, total]): ToleranceTerm => ({ cause, reach: total }))
        .filter(t => t.reach !== 0)
        .sort((x, y) => (x.cause < y.cause ? -1 : 1));
}
