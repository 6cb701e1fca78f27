import type { Money } from '../cutting/model.ts';
import { printAmount } from '../quantity/money.ts';
import { printLength, type Show } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';

/** `ticks` exact (1 tick = 1/16256 in = 1/640 mm), `cut` rounded to the job's cut-to, `text` the rounded one as it is read. */
export interface LengthJson { readonly ticks: Ticks; readonly cut: Ticks; readonly text: string }

export function lengthJson(ticks: Ticks, cut: Ticks, show: Show): LengthJson {
    return { ticks, cut, text: printLength(cut, show) };
}

/** `amount` rounded to the currency's minor unit, `exact` as a fraction. */
export interface MoneyJson { readonly amount: string; readonly exact: string; readonly currency: string }

export function moneyJson({ amount, currency }: Money): MoneyJson {
    return { amount: printAmount(amount, currency), exact: amount.toFraction(), currency };
}
