/** Things of one key together, in the order in which each key, and each thing, first comes. */
export function grouped<T, Key>(things: Iterable<T>, keyOf: (thing: T) => Key): Map<Key, T[]> {
    const groups = new Map<Key, T[]>();
    for (const thing of things) {
        const key = keyOf(thing), group = groups.get(key);
        if (group) group.push(thing);
        else groups.set(key, [thing]);
    }
    return groups;
}
