import type Fraction from 'fraction.js';
import type { Ticks } from '../quantity/ticks.ts';

/** Boards that are there already. */
export interface OnHand {
    readonly count: number; readonly length: Ticks;
    /** Of each, in the currency's major unit; undefined: it costs nothing. Never in another currency than the stock's price. */
    readonly worth?: { readonly amount: Fraction; readonly currency: string };
    /** The name of a board that was measured; and its width where that is less than its stock's: then it is only ripped. */
    readonly measured?: string; readonly width?: Ticks;
}
