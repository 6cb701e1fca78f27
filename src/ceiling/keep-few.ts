/**
 * What was made of a thing, kept as long as the thing is there and nobody has asked about `most` others since: all rooms of any
 * house stay, and not those of every file of a large workspace. It does not keep the things themselves. `known`: what helps to make it, where somebody has it.
 */
export function keepFew<Thing extends object, Made, Known extends unknown[]>(
    most: number, make: (thing: Thing, ...known: Known) => Made,
): (thing: Thing, ...known: Known) => Made {
    const kept = new WeakMap<Thing, Made>();
    const order: WeakRef<Thing>[] = [];
    return (thing, ...known) => {
        let made = kept.get(thing);
        if (made !== undefined) return made;
        kept.set(thing, made = make(thing, ...known));
        order.push(new WeakRef(thing));
        const oldest = order.length > most ? order.shift()!.deref() : undefined;
        if (oldest) kept.delete(oldest);
        return made;
    };
}

/** Rooms whose pieces are kept. */
export const MOST_ROOMS = 64;
