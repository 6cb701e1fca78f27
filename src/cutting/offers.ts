import type { JobSettings, Stock } from '../job/model.ts';
import { costOf } from '../quantity/money.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Money, Purchase } from './model.ts';

/** A board the yard sells, and what it costs where that is known. */
export interface Offer { readonly length: Ticks; readonly price?: Money }

/** Lengths the yard sells that may come into the house, the shortest first, each with its price. */
export function offersOf(stock: Stock, job: JobSettings): Offer[] {
    const longest = job.longestBoard?.value ?? Infinity;
    const lengths = new Set(stock.lengths.map(l => l.value).filter(l => l > 0 && l <= longest));
    return [...lengths].sort((a, b) => a - b).map(length => ({ length, price: priceOf(stock, length) }));
}

/** The price of one length: the one said for that length, else the one for every length. */
export function priceOf(stock: Stock, length: Ticks): Money | undefined {
    const price = stock.prices.find(p => p.for?.value === length) ?? stock.prices.find(p => !p.for);
    return price && { amount: costOf(price.perTick, length), currency: price.currency };
}

/** The boards as a shopping list, the longest first. */
export function purchasesOf(lengths: readonly Ticks[], offers: readonly Offer[]): Purchase[] {
    const prices = new Map(offers.map(o => [o.length, o.price]));
    const counts = new Map<Ticks, number>();
    for (const length of lengths) counts.set(length, (counts.get(length) ?? 0) + 1);
    return [...counts].sort(([a], [b]) => b - a).map(([length, count]) => {
        const each = prices.get(length);
        return each ? { length, count, each, cost: { amount: each.amount.mul(count), currency: each.currency } } : { length, count };
    });
}
