import type { Stretch } from './stretch.ts';

/** The least there is to every place as the last one, and the way there. */
export interface Ends {
    /** Ticks, by place; Infinity where it cannot be the last. */
    readonly least: readonly number[];
    /** All places in their order, that one last. */
    wayTo(last: number): number[];
}

/** As many places are gone through in every order. Twice as much work, and more, for each one more. */
export const MOST_EXACT = 15;

/**
 * The shortest ways through all places of a stretch of at most `MOST_EXACT`, by every set of places and the one of them that comes last (Held and Karp 1962).
 * `entry`: what it takes to come to each from where the ladder stood before.
 */
export function exactly({ waits, far }: Stretch, entry: readonly number[]): Ends {
    const count = entry.length, all = (1 << count) - 1, size = (all + 1) * count;
    const least = new Float64Array(size).fill(Infinity), from = new Int8Array(size).fill(-1);
    const needed = waits.map(own => [...own].reduce((set, i) => set | 1 << i, 0));
    // asked for half a million times: looked up, and only of places that are there to be gone to
    const hops = Float64Array.from({ length: count * count }, (_, i) => far(Math.floor(i / count), i % count));
    for (let i = 0; i < count; i++) if (needed[i] === 0) least[(1 << i) * count + i] = entry[i]!;
    const open = new Int8Array(count);
    for (let set = 1; set <= all; set++) {
        let opened = 0;
        for (let next = 0; next < count; next++) if (!(set & 1 << next) && (needed[next]! & set) === needed[next]) open[opened++] = next;
        for (let last = 0; last < count; last++) {
            const so = least[set * count + last]!;
            if (so === Infinity) continue;
            for (let i = 0; i < opened; i++) {
                const next = open[i]!, at = (set | 1 << next) * count + next, sum = so + hops[last * count + next]!;
                if (sum < least[at]!) { least[at] = sum; from[at] = last; }
            }
        }
    }
    return {
        least: Array.from({ length: count }, (_, last) => least[all * count + last]!),
        wayTo(end) {
            const way: number[] = [];
            for (let set = all, last = end; last >= 0;) {
                way.push(last);
                const before = from[set * count + last]!;
                set &= ~(1 << last);
                last = before;
            }
            return way.reverse();
        },
    };
}
