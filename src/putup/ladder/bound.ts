import type { Steps } from '../../plain/steps.ts';
import type { Stretch } from './stretch.ts';

/** Prices are changed so often. */
const ROUNDS = 80;
/** Rounds that are done in one step. */
const AT_ONCE = 20;

/**
 * No way through all places is shorter than this, in whatever order. A way is a tree in which every place but its ends has two ways; so with a price on
 * every place it takes no less than the least tree does, less the prices twice. Prices rise where that tree has more ways than two, and fall where it has one
 * (Held and Karp 1970). All in whole ticks, so that nothing is lost to rounding.
 */
export function* noLessThan({ far }: Stretch, entry: readonly number[], known: number): Steps<number> {
    const count = entry.length, price = entry.map(() => 0);
    let best = 0;
    for (let round = 0, pace = 1; round < ROUNDS; round++, pace *= SLOWER) {
        if (round % AT_ONCE === AT_ONCE - 1) yield;
        const { sum, ways } = leastTree(far, entry, price);
        // the end of a way has one, so its price counts once: that of the cheapest does at least
        const end = price.reduce((least, one, i) => (one < price[least]! ? i : least), 0);
        const bound = sum - 2 * price.reduce((all, one) => all + one, 0) + price[end]!;
        best = Math.max(best, bound);
        const off = ways.map((own, i) => own - (i === end ? 1 : 2)), all = off.reduce((squares, one) => squares + one * one, 0);
        if (best >= known || all === 0) break;
        const by = pace * (known - bound) / all;
        for (let i = 0; i < count; i++) price[i] = Math.round(price[i]! + by * off[i]!);
    }
    return Math.min(best, known);
}
const SLOWER = 0.96;

/** The least tree over all places, and the cheapest of the ways to them from where one comes from; and how many ways each place has then (Prim 1957). */
function leastTree(far: Stretch['far'], entry: readonly number[], price: readonly number[]): { readonly sum: number; readonly ways: readonly number[] } {
    const first = entry.reduce((best, one, i) => (one + price[i]! < entry[best]! + price[best]! ? i : best), 0);
    const to = entry.map(() => Infinity), from = entry.map(() => -1), isIn = entry.map(() => false), ways = entry.map(() => 0);
    to[first] = entry[first]! + price[first]!;
    let sum = 0;
    for (let left = entry.length; left > 0; left--) {
        let next = -1;
        for (let i = 0; i < to.length; i++) if (!isIn[i] && (next < 0 || to[i]! < to[next]!)) next = i;
        isIn[next] = true;
        sum += to[next]!;
        ways[next]!++;
        if (from[next]! >= 0) ways[from[next]!]!++;
        for (let i = 0; i < to.length; i++) {
            const length = far(next, i) + price[i]! + price[next]!;
            if (!isIn[i] && length < to[i]!) { to[i] = length; from[i] = next; }
        }
    }
    return { sum, ways };
}
