import { Rational } from '../quantity/rational.ts';
import type { Money } from './model.ts';

/** Adds up money without converting it: one sum a currency, by its code. */
export function sumMoney(amounts: readonly Money[]): Money[] {
    const sums = new Map<string, Rational>();
    for (const { amount, currency } of amounts) sums.set(currency, (sums.get(currency) ?? new Rational(0)).add(amount));
    return [...sums].sort(([a], [b]) => (a < b ? -1 : 1)).map(([currency, amount]) => ({ amount, currency }));
}
