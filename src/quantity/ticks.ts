/**
 * Lengths are whole numbers of ticks: 1 tick = 1/16256 in = 1/640 mm.
 * 16256 = 128 x 127, so every 1/128" and every 0.1 mm is a whole number of ticks and sums are exact.
 * Plain numbers carry them: 2^53 ticks are over eight million miles.
 * Areas and volumes are no products of ticks in this type: see rational.ts.
 */
export type Ticks = number;

export const TICKS_PER_INCH = 16256;
export const TICKS_PER_FOOT = 12 * TICKS_PER_INCH;
export const TICKS_PER_MM = 640;
