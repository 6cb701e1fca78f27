import { munkres } from 'munkres';

/** More of one kind in one house than anybody cuts before the owner changes his mind; beyond it the best is not looked for. */
const MOST = 400;

/** Pairs of rows and columns, and whether no other pairs gain more. */
interface Assignment { readonly pairs: readonly (readonly [number, number])[]; readonly proved: boolean }

/**
 * Pairs rows with columns so that what they gain together is most: each at most once, none that gains nothing.
 * @param gain whole numbers from 0; 0: they do not go together
 */
export function assign(rows: number, columns: number, gain: (row: number, column: number) => number): Assignment {
    if (rows === 0 || columns === 0) return { pairs: [], proved: true };
    const gains = Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (__, c) => gain(r, c)));
    if (Math.max(rows, columns) > MOST) return { pairs: greedy(gains), proved: false };
    const most = gains.flat().reduce((a, b) => Math.max(a, b), 0);
    const pairs = munkres(gains.map(row => row.map(each => most - each))).filter(([r, c]) => gains[r]![c]! > 0).sort(([a], [b]) => a - b);
    return { pairs, proved: isBest(gains, pairs) };
}

/** The greatest gains first. */
function greedy(gains: readonly (readonly number[])[]): [number, number][] {
    const takenRows = new Set<number>(), takenColumns = new Set<number>();
    const all = gains.flatMap((row, r) => row.flatMap((each, c) => (each > 0 ? [[each, r, c] as const] : [])))
        .sort((a, b) => b[0] - a[0] || a[1] - b[1] || a[2] - b[2]);
    const pairs: [number, number][] = [];
    for (const [, r, c] of all) {
        if (takenRows.has(r) || takenColumns.has(c)) continue;
        takenRows.add(r);
        takenColumns.add(c);
        pairs.push([r, c]);
    }
    return pairs.sort(([a], [b]) => a - b);
}

/**
 * Proof by prices: with a price on every row and column, none below 0, such that no pair gains more than its prices together, nothing can gain more than
 * the sum of all prices; and pairs that gain just that are best (duality of linear programs). The prices are found from the pairs, by
 * the rounds of Bellman and Ford, and are then looked at one by one, so that a mistake in them proves nothing.
 */
function isBest(gains: readonly (readonly number[])[], pairs: readonly (readonly [number, number])[]): boolean {
    const rows = gains.length, columns = gains[0]!.length;
    const rowOf = new Map(pairs.map(([r, c]) => [c, r])), columnOf = new Map(pairs);
    const price = new Array<number>(columns).fill(0);
    // the price of a column that is taken is what its row could gain elsewhere less than here, and what is free costs nothing
    const left = (r: number): number => gains[r]!.reduce((most, each, c) => Math.max(most, each - price[c]!), 0);
    for (let round = 0, changed = true; changed && round <= columns; round++) {
        changed = false;
        for (const [c, r] of rowOf) {
            // every other row must not want this column at its price more than what it has
            for (let other = 0; other < rows; other++) {
                if (other === r) continue;
                const own = columnOf.get(other), has = own === undefined ? 0 : gains[other]![own]! - price[own]!;
                const wanted = gains[other]![c]! - has;
                if (wanted > price[c]!) {
                    price[c] = wanted;
                    changed = true;
                }
            }
        }
    }
    const sum = price.reduce((a, b) => a + b, 0) + gains.reduce((a, _, r) => a + left(r), 0);
    const gained = pairs.reduce((a, [r, c]) => a + gains[r]![c]!, 0);
    return sum === gained;
}
