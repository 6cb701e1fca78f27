import type { Counts } from './bound.ts';
import { STEPS, type Effort } from './effort.ts';
import type { Master, MasterAnswer } from './master.ts';
import { MANY_LENGTHS, worthOfColumn, type Offer, type Prices, type Pricing } from './pricing.ts';
import type { CuttingProblem } from './problem.ts';
import type { SectionWorth } from './sections.ts';

export interface Generated {
    readonly answer: MasterAnswer;
    /** The worth of the pieces that gave the highest bound, and of sections. */
    readonly values: ArrayLike<number>;
    readonly sections: readonly SectionWorth[];
    /** That bound, with the rounding of floating point in it: for the search, not for a claim. */
    readonly bound: number;
    /** True where no column is missing any more: then the answer is the best there is in parts. */
    readonly complete: boolean;
}

/**
 * Column generation: solves the master, asks what ways to cut are worth more than their boards at the worth it gives the
 * pieces, adds them, and again. Between two passes the worth is held near the one with the best bound so far (Wentges'
 * smoothing), which keeps it from jumping about: the nearer the more often that brings what is wanted. Ends
 * early where the bound reaches `cutoff` or the effort is spent.
 * @param about what the pieces are worth at about: held near from the first pass on, where it is better than what the master begins with
 */
export function generate(problem: CuttingProblem, demand: readonly number[], master: Master, pricing: Pricing, counts: Counts,
    effort: Effort, { cutoff = Infinity, about }: { readonly cutoff?: number; readonly about?: readonly number[] | undefined } = {}): Generated | undefined {
    const usable = counts.most.map(most => most > 0);
    const isMany = demand.filter(count => count > 0).length > MANY_LENGTHS;
    const most = isMany ? LITTLE : SMOOTHING;
    let smoothing = most;
    const dearest = Math.max(...problem.boards.map(({ cost }) => cost));
    const keep = problem.boards.length > 2 ? 1 : 5;
    let center: Prices | undefined;
    let values: ArrayLike<number> | undefined;
    let sections: readonly SectionWorth[] = [];
    let bound = -Infinity;

    const better = (prices: Prices, worth: readonly number[]): void => {
        for (const over of new Set([1, scaleOf(problem, worth)])) {
            const reached = lagrangian(problem, demand, prices, worth, over, counts);
            if (reached <= bound) continue;
            bound = reached;
            values = over === 1 ? prices.items : Array.from(prices.items, value => value / over);
            center = scaled(prices, over);
            ({ sections } = center);
        }
    };
    if (about) {
        const none = counts.sections?.map(({ from }) => ({ from, worth: 0 })) ?? [];
        const prices: Prices = { items: about, boards: problem.boards.map(({ cost }) => cost), sections: none };
        const offer = pricing.offer(prices, usable, 1, BUDGET, keep);
        if (offer.exact) better(prices, offer.worth);
        for (const column of offer.columns) master.add(column);
    }
    for (;;) {
        const answer = master.solve();
        if (!answer) return undefined;
        for (let weight = center ? smoothing : 0, tries = 0; ; weight = ++tries > 3 ? 0 : weight * 0.6) {
            effort.spent += STEPS.pass + demand.length * STEPS.sorted;
            const prices = center ? mixed(center, answer.prices, weight) : answer.prices;
            let offer = isMany && pricing.offerByTables(prices, usable) || pricing.offer(prices, usable, weight > 0 ? 0.98 : 1 + 1e-9, BUDGET, keep);
            let added = addTo(problem, master, offer, answer.prices);
            if (!offer.exact && !added) {
                offer = pricing.offerByTables(prices, usable) ?? offer;
                added = addTo(problem, master, offer, answer.prices);
            }
            if (offer.exact) better(prices, offer.worth);
            const known = { answer, values: values ?? answer.prices.items, sections: values ? sections : answer.prices.sections, bound };
            if (bound >= cutoff || effort.isSpent) return { ...known, complete: false };
            if (added) {
                // where what was held near brought nothing at first, less is held; where it did, more again
                smoothing = tries > 0 ? smoothing * LESS : Math.min(most, smoothing + MORE * (1 - smoothing));
                break;
            }
            if (weight === 0) return {
                ...known, complete: offer.exact
                    && offer.worth.every((worth, k) =>
                        !usable[k] || worth <= Math.max(0, prices.boards[k]!) + HAIR * Math.max(1, dearest / FINER, problem.boards[k]!.cost)),
            };
        }
    }
}
const SMOOTHING = 0.8;
const LESS = 0.7;
const MORE = 0.1;
/** Of very many lengths a pass takes long, and what is worth its price is found all the same. */
const LITTLE = 0.5;
/** Of the search for the content of a board. */
const BUDGET = 30_000;
const HAIR = 1e-6;
/** What a board on hand may seem to be worth, which costs nothing, by what the dearest costs: the solver rounds by what all is worth together. */
const FINER = 100;

/** Adds what is worth its price at the master's own prices; says whether anything was new. */
function addTo(problem: CuttingProblem, master: Master, offer: Offer, prices: Prices): boolean {
    let added = false;
    for (const column of offer.columns) {
        const price = prices.boards[column.board]!;
        if (worthOfColumn(problem, column, prices) - price > 1e-9 * Math.max(1, price)) added = master.add(column) || added;
    }
    return added;
}

/** By how much all worth has to be divided so that no board of which there is no end carries more than it costs. */
function scaleOf({ boards }: CuttingProblem, worth: readonly number[]): number {
    return boards.reduce((most, { cost, available }, k) => (available === null && cost > 0 ? Math.max(most, worth[k]! / cost) : most), 1);
}

function lagrangian(
    { boards }: CuttingProblem, demand: readonly number[], values: Prices, worth: readonly number[], scale: number, { least, most, sections }: Counts,
): number {
    let sum = demand.reduce((total, count, i) => total + count * values.items[i]!, 0) / scale;
    values.sections.forEach(({ worth }, s) => {
        const { least: few, most: many } = sections![s]!;
        if (worth > 0 || many < Infinity) sum += worth / scale * (worth > 0 ? few : many);
    });
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
        sections: a.sections.map(({ from, worth }, s) => ({ from, worth: mix(worth, b.sections[s]!.worth) })),
    };
}

function scaled(prices: Prices, by: number): Prices {
    return by === 1 ? prices : {
        items: Array.from(prices.items, value => value / by),
        boards: prices.boards.map(value => value / by),
        sections: prices.sections.map(({ from, worth }) => ({ from, worth: worth / by })),
    };
}
