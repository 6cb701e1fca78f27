import type { Money } from '../cutting/model.ts';
import { printAmount } from '../quantity/money.ts';
import { printLength, type Show } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';

// In the published schemas a number of one of these types is whole and not below what is said.
/** @asType integer */
export type Whole = number;
/** @asType integer @minimum 0 */
export type Count = number;
/** @asType integer @minimum 1 */
export type FromOne = number;

/** A length. */
export interface LengthJson {
    /** Exact: 1 tick is 1/16256 in and 1/640 mm. */
    readonly ticks: Ticks;
    /** In ticks: a piece or an offcut rounded down to the job's cut-to, a reading of the tape at the saw to its nearest mark, all else as it is. */
    readonly cut: Ticks;
    /** The rounded length as it is read, in the job's units: 4' 2 7/8" or 1292.5 mm; 19 mm also in a job in inches. */
    readonly text: string;
}

export function lengthJson(ticks: Ticks, cut: Ticks, show: Show): LengthJson {
    return { ticks, cut, text: printLength(cut, show) };
}

/** Money. */
export interface MoneyJson {
    /**
     * Rounded to the currency's minor unit, half away from zero.
     * @pattern ^-?\d+(\.\d+)?$
     */
    readonly amount: string;
    /**
     * The exact amount as a fraction.
     * @pattern ^-?\d+(/\d+)?$
     */
    readonly exact: string;
    /** ISO 4217 code. */
    readonly currency: string;
}

export function moneyJson({ amount, currency }: Money): MoneyJson {
    return { amount: printAmount(amount), exact: amount.toFraction(), currency };
}
