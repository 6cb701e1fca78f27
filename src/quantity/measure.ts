import type { Ticks } from './ticks.ts';

/**
 * A length with what is known of its error: nominal + a sum of sources.
 * Each source is keyed by what causes it (a rip set-up, a router set-up, a stop at the saw), so that what shares a
 * cause cancels by itself when lengths are subtracted; worst case and root-sum-square fall out (tolerance.ts).
 */
export interface Measure { readonly ticks: Ticks; readonly tolerance: Tolerance }

/** Sorted by cause, one term a cause, none of reach zero: equal tolerances are equal data. */
export type Tolerance = readonly ToleranceTerm[];

export interface ToleranceTerm {
    readonly cause: string;
    /** Signed reach in ticks (may be a fraction of one): the sign says which way this length goes when the cause goes up. */
    readonly reach: number;
}
