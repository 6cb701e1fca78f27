import type { JobSettings, Stock } from '../job/model.ts';
import { costOf } from '../quantity/money.ts';
import { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Blank } from './blank.ts';
import { leastLength, openBoards, type Filled, type Saw } from './fill.ts';
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
function priceOf(stock: Stock, length: Ticks): Money | undefined {
    const price = stock.prices.find(p => p.for?.value === length) ?? stock.prices.find(p => !p.for);
    return price && { amount: costOf(price.perTick, length), currency: price.currency };
}

/**
 * A first plan of what to buy: once for each length sold, boards of that length are filled, each is then exchanged for
 * the cheapest that still holds its pieces, and the cheapest of these plans stands. It is no proof that none is cheaper.
 * Lengths without a price are bought only where no priced one is long enough, or where there is none with a price.
 */
export function buyBoards(blanks: readonly Blank[], offers: readonly Offer[], saw: Saw): { filled: Filled[]; left: Blank[] } {
    const priced = offers.filter(o => o.price);
    const byCost = priced.length > 0;
    const preferred = byCost ? priced : offers;
    const cheapestFor = (least: Ticks): Offer | undefined =>
        cheapest(preferred.filter(o => o.length >= least), byCost) ?? offers.find(o => o.length >= least);

    let best: { filled: Filled[]; left: Blank[]; worth: Worth } | undefined;
    for (const offer of preferred) {
        const { filled, left } = openBoards(blanks, saw, blank => {
            const least = blank.length + saw.endTrim;
            return least <= offer.length ? offer.length : cheapestFor(least)?.length;
        });
        const shrunk = filled.map(board => ({ ...board, length: cheapestFor(leastLength(board, saw))!.length }));
        const worth = worthOf(shrunk, offers, byCost);
        if (!best || isBetter(worth, best.worth)) best = { filled: shrunk, left, worth };
    }
    return best ?? { filled: [], left: [...blanks] };
}

interface Worth { readonly cost: Rational; readonly unpriced: number; readonly boards: number; readonly length: Ticks }

function worthOf(boards: readonly Filled[], offers: readonly Offer[], byCost: boolean): Worth {
    const prices = new Map(offers.map(o => [o.length, o.price?.amount]));
    const length = boards.reduce((sum, b) => sum + b.length, 0);
    if (!byCost) return { cost: new Rational(length), unpriced: 0, boards: boards.length, length };
    const counts = countBy(boards.map(b => b.length));
    let cost = new Rational(0);
    for (const [each, count] of counts) cost = cost.add((prices.get(each) ?? new Rational(0)).mul(count));
    return { cost, unpriced: boards.filter(b => !prices.get(b.length)).length, boards: boards.length, length };
}

function isBetter(a: Worth, b: Worth): boolean {
    const order = a.unpriced - b.unpriced || a.cost.compare(b.cost) || a.boards - b.boards || a.length - b.length;
    return order < 0;
}

function cheapest(offers: readonly Offer[], byCost: boolean): Offer | undefined {
    return offers.reduce<Offer | undefined>((best, o) =>
        best && (!byCost || best.price!.amount.lte(o.price!.amount)) ? best : o, undefined);
}

export function countBy<T>(values: readonly T[]): Map<T, number> {
    const counts = new Map<T, number>();
    for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
    return counts;
}

/** The boards as a shopping list, the longest first. */
export function purchasesOf(lengths: readonly Ticks[], offers: readonly Offer[]): Purchase[] {
    const prices = new Map(offers.map(o => [o.length, o.price]));
    return [...countBy(lengths)].sort(([a], [b]) => b - a).map(([length, count]) => {
        const each = prices.get(length);
        return each ? { length, count, each, cost: { amount: each.amount.mul(count), currency: each.currency } } : { length, count };
    });
}
