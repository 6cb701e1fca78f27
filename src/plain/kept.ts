import { atOnce, type Steps } from './steps.ts';

/** Rooms of which as much is kept as their pieces and their arrangement are. */
export const MOST_ROOMS = 64;

/** What was made of a thing. `known`: what helps to make it, where somebody has it. */
interface Kept<Thing, Made, Known extends unknown[] = []> {
    (thing: Thing, ...known: Known): Made;
    /** Whether it is there already. */
    has(thing: Thing): boolean;
}

/**
 * What was made of a thing, kept as long as the thing is there and, where `most` says how many are kept, nobody has asked about so many others
 * since: all rooms of any house stay, and not those of every file of a large workspace. What somebody else still holds is found again all the same:
 * a house of more rooms than are kept has the pieces of all of them, and they need not be made twice. It does not keep the things themselves. A tree
 * or a room that is read anew is another thing, so nothing here goes stale that is made of the thing alone. What comes to `undefined` is made again.
 */
export function kept<Thing extends object, Made, Known extends unknown[]>(
    make: (thing: Thing, ...known: Known) => Made, most = Infinity,
): Kept<Thing, Made, Known> {
    const all = new WeakMap<Thing, Made>(), letGo = new WeakMap<Thing, WeakRef<WeakKey>>();
    const order: WeakRef<Thing>[] = [];
    const held = (thing: Thing): Made | undefined => all.get(thing) ?? letGo.get(thing)?.deref() as Made | undefined;
    const of = (thing: Thing, ...known: Known): Made => {
        const there = all.get(thing);
        if (there !== undefined) return there;
        const made = held(thing) ?? make(thing, ...known);
        all.set(thing, made);
        if (most < Infinity) order.push(new WeakRef(thing));
        const oldest = order.length > most ? order.shift()!.deref() : undefined, old = oldest && all.get(oldest);
        if (oldest) all.delete(oldest);
        if (oldest && typeof old === 'object' && old !== null) letGo.set(oldest, new WeakRef(old));
        return made;
    };
    return Object.assign(of, { has: (thing: Thing) => held(thing) !== undefined });
}

/** What takes long to make, for who can wait, and step by step for who must not keep others waiting. */
interface KeptInSteps<Thing, Made, Known extends unknown[] = []> extends Kept<Thing, Made, Known> {
    inSteps(thing: Thing, ...known: Known): Steps<Made>;
}

/** The same, of what is made in steps. What two make at the same time is what the first had ready. */
export function keptInSteps<Thing extends object, Made, Known extends unknown[]>(
    make: (thing: Thing, ...known: Known) => Steps<Made>, most = Infinity,
): KeptInSteps<Thing, Made, Known> {
    const all = kept((_: Thing, made: () => Made) => made(), most);
    return Object.assign((thing: Thing, ...known: Known): Made => all(thing, () => atOnce(make(thing, ...known))), {
        has: all.has,
        *inSteps(thing: Thing, ...known: Known): Steps<Made> {
            if (all.has(thing)) return all(thing, () => atOnce(make(thing, ...known)));
            const made = yield* make(thing, ...known);
            return all(thing, () => made);
        },
    });
}

/**
 * What was made of a plan, made again only where something in the plan is another: the price of a board, a lamp or a note makes new data of a
 * room, and its beams stay where they are. Kept is the last plan of each name, of the `most` whose plans came last; plans are compared by all that
 * stands in them.
 */
export function keptByName<Plan, Made, Known extends unknown[]>(
    make: (plan: Plan, ...known: Known) => Made, most: number,
): (name: string, plan: Plan, ...known: Known) => Made {
    const last = new Map<string, { readonly said: string; readonly made: Made }>();
    return (name, plan, ...known) => {
        const said = JSON.stringify(plan), before = last.get(name);
        if (before?.said === said) return before.made;
        const made = make(plan, ...known);
        last.delete(name);
        last.set(name, { said, made });
        if (last.size > most) last.delete(last.keys().next().value!);
        return made;
    };
}
