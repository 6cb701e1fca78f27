import type { Steps } from '../../plain/steps.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { noLessThan } from './bound.ts';
import { exactly, MOST_EXACT, type Ends } from './exact.ts';
import { shorter } from './shorter.ts';
import { hop, type Stretch } from './stretch.ts';

/** In which order the places of each stretch are gone to, how far that is in all, and what no order is shorter than. */
interface LeastWay { readonly orders: readonly (readonly number[])[]; readonly length: Ticks; readonly atLeast: Ticks }

/**
 * The shortest way of the ladder through stretches one after the other, wherever the first begins. What comes then is reckoned with: of every stretch of at
 * most `MOST_EXACT` places the least is kept for every place that may be its last. A longer one is improved as long as small changes make it shorter, and what
 * no order is shorter than is worked out beside it: where the two are the same, this is proved for it, too.
 */
export function* leastWay(stretches: readonly Stretch[]): Steps<LeastWay> {
    const done: Done[] = [];
    for (const stretch of stretches) done.push(yield* after(done.at(-1), stretch));
    const last = done.at(-1);
    if (!last) return { orders: [], length: 0, atLeast: 0 };
    const length = Math.min(...last.ends.least), orders: number[][] = [];
    for (let i = done.length - 1, end = last.ends.least.indexOf(length); i >= 0; i--) {
        const way = done[i]!.ends.wayTo(end);
        orders.unshift(way);
        end = done[i]!.cameFrom[way[0]!]!;
    }
    return { orders, length, atLeast: Math.min(...last.low) };
}

interface Done {
    readonly stretch: Stretch; readonly ends: Ends;
    /** The last place of the stretch before, by the first one of this. */
    readonly cameFrom: readonly number[];
    /** What no way to each place as the last one is shorter than. */
    readonly low: readonly number[];
}

function* after(before: Done | undefined, stretch: Stretch): Steps<Done> {
    const { at } = stretch;
    if (!before) return yield* found(stretch, at.map(() => 0), at.map(() => 0), at.map(() => -1));
    const hops = at.map(to => before.stretch.at.map(from => hop(from, to)));
    const cameFrom = hops.map(own => leastOf(own.map((far, i) => far + before.ends.least[i]!)));
    const entry = hops.map((own, i) => own[cameFrom[i]!]! + before.ends.least[cameFrom[i]!]!);
    const low = hops.map(own => Math.min(...own.map((far, i) => far + before.low[i]!)));
    return yield* found(stretch, entry, low, cameFrom);
}

function* found(stretch: Stretch, entry: readonly number[], lowEntry: readonly number[], cameFrom: readonly number[]): Steps<Done> {
    if (entry.length <= MOST_EXACT) {
        const ends = exactly(stretch, entry), isSame = entry.every((one, i) => one === lowEntry[i]);
        return { stretch, ends, cameFrom, low: isSame ? ends.least : exactly(stretch, lowEntry).least };
    }
    yield;
    const way = yield* shorter(stretch, entry), [first] = way as [number];
    const inIt = way.slice(1).reduce((sum, one, i) => sum + stretch.far(way[i]!, one), 0), length = entry[first]! + inIt;
    yield;
    const low = yield* noLessThan(stretch, lowEntry, lowEntry[first]! + inIt);
    // where it ends, nobody else may
    return { stretch, ends: { least: entry.map((_, i) => (i === way.at(-1) ? length : Infinity)), wayTo: () => way }, cameFrom, low: entry.map(() => low) };
}

function leastOf(sums: readonly number[]): number {
    return sums.reduce((best, one, i) => (one < sums[best]! ? i : best), 0);
}
