import type { CuttingProblem } from './problem.ts';

/** Lengths of strips: from the first of each to the last all are taken to be as short as the one and worth as much as the other. */
export interface Places { readonly first: readonly number[]; readonly last: readonly number[]; readonly areSingle: boolean }

/** Where they are very many, several together. */
export function togetherOf(places: readonly number[]): Places {
    const each = Math.max(1, Math.ceil(places.length / MOST_SINGLE));
    const of = (offset: number): number[] =>
        Array.from({ length: Math.ceil(places.length / each) }, (_, g) => places[Math.min(places.length - 1, g * each + offset)]!);
    return { first: of(0), last: of(each - 1), areSingle: each === 1 };
}

/** Every length that a strip of some lane may have: sums of its pieces. */
export function placesOf({ items, strips }: CuttingProblem, counts: readonly number[], longest: number): number[] {
    const places = new Uint8Array(longest + 1);
    strips.forEach((_, l) => {
        const reached = new Uint8Array(longest + 1);
        reached[0] = 1;
        items.forEach(({ size, lanes }, i) => {
            const count = counts[i]!;
            if (!lanes.includes(l + 1) || count === 0) return;
            const times = new Uint32Array(longest + 1).fill(count + 1);
            for (let at = 0; at <= longest; at++) if (reached[at]) times[at] = 0;
            for (let at = 0; at + size <= longest; at++) {
                if (times[at]! >= count) continue;
                reached[at + size] = 1;
                times[at + size] = Math.min(times[at + size]!, times[at]! + 1);
            }
        });
        for (let at = 1; at <= longest; at++) if (reached[at]) places[at] = 1;
    });
    const all: number[] = [];
    places.forEach((isReached, at) => { if (isReached) all.push(at); });
    return all;
}
const MOST_SINGLE = 4000;

/** The last that is not above `most`; -1 where none is. */
export function lastWithin(rising: readonly number[], most: number): number {
    let low = 0, high = rising.length;
    while (low < high) {
        const middle = (low + high) >> 1;
        if (rising[middle]! <= most) low = middle + 1; else high = middle;
    }
    return low - 1;
}
