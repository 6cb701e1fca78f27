import type { Given, Source } from '../provenance/source.ts';

/** How dry and how damp a room gets over a year. */
export interface Seasons {
    readonly at: Source;
    readonly driest: Given<Air>;
    readonly dampest: Given<Air>;
    /** Moisture content of the boards when they go up, in percent; undefined: nobody says. */
    readonly goesUpAt?: Given<number>;
}
/** Relative humidity as a share of 1, and temperature. */
export interface Air { readonly humidity: number; readonly celsius: number }
