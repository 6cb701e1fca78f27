import { grouped } from '../plain/groups.ts';

/** Pairs of two lists, and what of either is in no pair, each in the order of its list. */
export interface Paired<T> { readonly pairs: { readonly before: T; readonly after: T }[]; readonly before: T[]; readonly after: T[] }

/** Those of one key in pairs, the first with the first: of what is there several times as many as both have. */
export function pairBy<T extends object>(before: readonly T[], after: readonly T[], keyOf: (one: T) => string): Paired<T> {
    const open = grouped(before, keyOf), pairs: { before: T; after: T }[] = [], rest: T[] = [];
    for (const one of after) {
        const old = open.get(keyOf(one))?.shift();
        if (old) pairs.push({ before: old, after: one });
        else rest.push(one);
    }
    const taken = new Set(pairs.map(pair => pair.before));
    return { pairs, before: before.filter(one => !taken.has(one)), after: rest };
}

/** Pairs of what is the only one of its key on either side; what has no key is in none. */
export function pairOnly<T extends object>(before: readonly T[], after: readonly T[], keyOf: (one: T) => string | undefined): Paired<T> {
    const keys = new Map([...before, ...after].map(one => [one, keyOf(one)]));
    const onlyOf = (list: readonly T[]): Map<string | undefined, T> => {
        const byKey = grouped(list.filter(one => keys.get(one) !== undefined), one => keys.get(one));
        return new Map([...byKey].filter(([, all]) => all.length === 1).map(([key, [one]]) => [key, one!]));
    };
    const was = onlyOf(before), is = onlyOf(after), isPaired = (one: T): boolean => was.has(keys.get(one)) && is.has(keys.get(one));
    return {
        pairs: after.filter(isPaired).map(one => ({ before: was.get(keys.get(one))!, after: one })),
        before: before.filter(one => !isPaired(one)), after: after.filter(one => !isPaired(one)),
    };
}
