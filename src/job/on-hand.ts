import type Fraction from 'fraction.js';
import type { Recorded } from './status.ts';
import type { Ticks } from '../quantity/ticks.ts';

/** Boards that are there already, and how their lengths are known. */
export interface OnHand extends Recorded {
    readonly count: number; readonly length: Ticks;
    /** Of each, in the currency's major unit; undefined: it costs nothing. Never in another currency than the stock's price. */
    readonly worth?: { readonly amount: Fraction; readonly currency: string };
    /** The name of a board that was measured. */
    readonly measured?: string;
    /** Of a strip, and of a board that was measured, where it is less than its stock's: nothing is cut from the whole width of its stock then. */
    readonly width?: Ticks;
}

/** Boards on hand with the same key are alike. */
export function onHandKey({ length, worth, measured, width }: Pick<OnHand, 'length' | 'worth' | 'measured' | 'width'>): string {
    return `${length} ${worth?.amount.toFraction() ?? ''} ${width ?? ''} ${measured ?? ''}`;
}
