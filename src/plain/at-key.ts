/**
 * What stands under a key; where nothing does, what is made there now. ECMAScript will have it as `getOrInsertComputed`, which the oldest Node
 * does not know.
 */
export function atKey<Key, Value>(map: { get(key: Key): Value | undefined; set(key: Key, value: Value): unknown }, key: Key, make: () => Value): Value {
    let value = map.get(key);
    if (value === undefined) map.set(key, value = make());
    return value;
}

/** A list in which each thing stands once, named by its number. */
export class Numbered<Thing> {
    readonly list: Thing[] = [];
    private readonly numbers = new Map<string, number>();

    /** The number of what has this key; it is the next one where nothing has. */
    at(key: string, make: () => Thing): number {
        return atKey(this.numbers, key, () => this.list.push(make()) - 1);
    }
}
