import { munkres } from 'munkres';
import { atKey, Numbered } from '../plain/at-key.ts';

/** More of one kind in one house than anybody cuts before the owner changes his mind; beyond it the best is not looked for. */
const MOST = 400;

/** Pairs of rows and columns, and whether no other pairs gain more. */
interface Assignment { readonly pairs: readonly (readonly [number, number])[]; readonly proved: boolean }

/** What rows and columns are alike by: those with the same words gain the same. */
interface Alike { row(row: number): string; column(column: number): string }
const ALL_DIFFERENT: Alike = { row: String, column: String };

/**
 * Pairs rows with columns so that what they gain together is most: each at most once, none that gains nothing.
 * @param gain whole numbers from 0; 0: they do not go together
 * @param alike where many are, their gains are asked for once
 */
export function assign(rows: number, columns: number, gain: (row: number, column: number) => number, alike = ALL_DIFFERENT): Assignment {
    if (rows === 0 || columns === 0) return { pairs: [], proved: true };
    const [rowKinds, columnKinds] = [kindsOf(rows, alike.row), kindsOf(columns, alike.column)];
    const ofKinds = rowKinds.members.map(([r]) => columnKinds.members.map(([c]) => gain(r!, c!)));
    if (Math.max(rows, columns) > MOST) return { pairs: greedy(ofKinds, rowKinds, columnKinds), proved: false };
    const gains = rowKinds.of.map(row => columnKinds.of.map(column => ofKinds[row]![column]!));
    const most = gains.flat().reduce((a, b) => Math.max(a, b), 0);
    const pairs = munkres(gains.map(row => row.map(each => most - each))).filter(([r, c]) => gains[r]![c]! > 0).sort(([a], [b]) => a - b);
    return { pairs, proved: isBest(gains, pairs) };
}

/** `of`: the kind of each; `members`: those of each kind, in their order. */
interface Kinds { readonly of: readonly number[]; readonly members: readonly (readonly number[])[] }

function kindsOf(count: number, keyOf: (index: number) => string): Kinds {
    const kinds = new Numbered<number[]>(), of = Array.from({ length: count }, (_, i) => {
        const kind = kinds.at(keyOf(i), () => []);
        kinds.list[kind]!.push(i);
        return kind;
    });
    return { of, members: kinds.list };
}

/** The greatest gains first; of equal ones those of the first rows, with the first columns. */
function greedy(gains: readonly (readonly number[])[], rows: Kinds, columns: Kinds): [number, number][] {
    const levels = new Map<number, Map<number, number[]>>();
    gains.forEach((row, kind) => row.forEach((each, column) => {
        if (each > 0) atKey(atKey(levels, each, () => new Map<number, number[]>()), kind, () => []).push(column);
    }));
    const takenRows = new Set<number>(), nextOf = columns.members.map(() => 0), pairs: [number, number][] = [];
    for (const [, columnsOf] of [...levels].sort(([a], [b]) => b - a)) {
        for (const r of [...columnsOf.keys()].flatMap(kind => rows.members[kind]!).sort((a, b) => a - b)) {
            if (takenRows.has(r)) continue;
            // those of a kind are taken in their order
            const free = columnsOf.get(rows.of[r]!)!.flatMap(kind => columns.members[kind]![nextOf[kind]!] ?? []);
            if (free.length === 0) continue;
            const c = free.reduce((least, each) => Math.min(least, each));
            nextOf[columns.of[c]!]!++;
            takenRows.add(r);
            pairs.push([r, c]);
        }
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
