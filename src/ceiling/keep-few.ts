/**
 * What was made of a thing, kept as long as the thing is there and nobody has asked about `most` others since: all rooms of any
 * house stay, and not those of every file of a large workspace. It does not keep the things themselves.
 */
export function keepFew<Thing extends object, Made>(most: number, make: (thing: Thing) => Made): (thing: Thing) => Made {
    const kept = new WeakMap<Thing, Made>();
    const order: WeakRef<Thing>[] = [];
    return thing => {
        let made = kept.get(thing);
        if (made !== undefined) return made;
        kept.set(thing, made = make(thing));
        order.push(new WeakRef(thing));
        const oldest = order.length > most ? order.shift()!.deref() : undefined;
        if (oldest) kept.delete(oldest);
        return made;
    };
}

/** Rooms whose pieces are kept. */
export const MOST_ROOMS = 64;
