/**
 * Something worked out from a part of the tree, kept as long as that part. A re-parsed file has a new tree, so nothing
 * here can go stale as long as it is worked out from that tree alone.
 */
export function kept<K extends object, V>(make: (key: K) => V): (key: K) => V {
    const values = new WeakMap<K, V>();
    return key => {
        let value = values.get(key);
        if (value === undefined) values.set(key, value = make(key));
        return value;
    };
}
