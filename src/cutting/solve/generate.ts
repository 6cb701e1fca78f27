import type { Counts } from './bound.ts';
import type { Column } from './columns.ts';
import type { Effort } from './effort.ts';
import type { Master, MasterAnswer } from './master.ts';
import type { Offer, Prices, Pricing } from './pricing.ts';
import type { CuttingProblem } from './problem.ts';

export interface Generated {
    readonly answer: MasterAnswer;
    /** The worth of the pieces that gave the highest bound. */
    readonly values: ArrayLike<number>;
    /** That bound, with the rounding of floating point in it: for the search, not for a claim. */
    readonly bound: number;
    /** True where no column is missing any more: then the answer is the best there is in parts. */
    readonly complete: boolean;
}

/**
 * Column generation: solves the master, asks what ways to cut are worth more than their boards at the worth it gives the
 * pieces, adds them, and again. Between two passes the worth is held near the one with the best bound so far (Wentges'
 * smoothing), which keeps it from jumping about. Ends early where the bound reaches `cutoff` or the effort is spent.
 */
export function generate(problem: CuttingProblem, demand: readonly number[], master: Master, pricing: Pricing, counts: Counts,
    effort: Effort, cutoff = Infinity, near?: ArrayLike<number>): Generated | undefined {
    const usable = counts.most.map(most => most > 0);
    const budget = demand.filter(count => count > 0).length > 250 ? 3000 : 30_000;
    const keep = problem.boards.length > 2 ? 1 : 5;
    let center: Prices | undefined;
    let values: ArrayLike<number> | undefined = near;
    let bound = -Infinity;

    for (;;) {
        const answer = master.solve();
        if (!answer) return undefined;
        for (let weight = center ? SMOOTHING : 0, tries = 0; ; weight = ++tries > 3 ? 0 : weight * 0.6) {
            const prices = center ? mixed(center, answer.prices, weight) : answer.prices;
            let offer = pricing.offer(prices, usable, weight > 0 ? 0.98 : 1 + 1e-9, budget, keep);
            let added = addTo(master, offer, answer.prices);
            if (!offer.exact && !added) {
                offer = pricing.offerByTables(prices, usable) ?? offer;
                added = addTo(master, offer, answer.prices);
            }
            if (offer.exact) {
                for (const over of new Set([1, scaleOf(problem, offer.worth)])) {
                    const reached = lagrangian(problem, demand, prices.items, offer.worth, over, counts);
                    if (reached <= bound) continue;
                    bound = reached;
                    values = over === 1 ? prices.items : Array.from(prices.items, value => value / over);
                    center = scaled(prices, over);
                }
            }
            if (bound >= cutoff || effort.isSpent) return { answer, values: values ?? answer.prices.items, bound, complete: false };
            if (added) break;
            if (weight === 0) return {
                answer, values: values ?? answer.prices.items, bound,
                complete: offer.exact
                    && offer.worth.every((worth, k) => !usable[k] || worth <= Math.max(0, prices.boards[k]!) + HAIR * Math.max(1, problem.boards[k]!.cost)),
            };
        }
    }
}
const SMOOTHING = 0.8;
const HAIR = 1e-6;

/** Adds what is worth its price at the master's own prices; says whether anything was new. */
function addTo(master: Master, offer: Offer, prices: Prices): boolean {
    let added = false;
    for (const column of offer.columns)
        if (gainOf(column, prices) > 1e-9 * Math.max(1, prices.boards[column.board]!)) added = master.add(column) || added;
    return added;
}

function gainOf({ board, gives }: Column, prices: Prices): number {
    return gives.reduce((sum, [item, count]) => sum + prices.items[item]! * count, -prices.boards[board]!);
}

/** By how much all worth has to be divided so that no board of which there is no end carries more than it costs. */
function scaleOf({ boards }: CuttingProblem, worth: readonly number[]): number {
    return boards.reduce((most, { cost, available }, k) => (available === null && cost > 0 ? Math.max(most, worth[k]! / cost) : most), 1);
}

function lagrangian(
    { boards }: CuttingProblem, demand: readonly number[], values: ArrayLike<number>, worth: readonly number[], scale: number, { least, most }: Counts,
): number {
    let sum = demand.reduce((total, count, i) => total + count * values[i]!, 0) / scale;
    boards.forEach(({ cost }, k) => {
        const over = cost - worth[k]! / scale;
        if (over !== 0) sum += over * (over > 0 ? least[k]! : most[k]!);
    });
    return sum;
}

function mixed(a: Prices, b: Prices, weight: number): Prices {
    const mix = (x: number, y: number): number => weight * x + (1 - weight) * y;
    return {
        items: Array.from(a.items, (value, i) => mix(value, b.items[i]!)),
        boards: a.boards.map((value, k) => mix(value, b.boards[k]!)),
    };
}

function scaled(prices: Prices, by: number): Prices {
    return by === 1 ? prices : {
        items: Array.from(prices.items, value => value / by),
        boards: prices.boards.map(value => value / by),
    };
}
