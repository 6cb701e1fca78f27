/**
 * What was made of a plan, made again only where something in the plan is another: the price of a board, a lamp or a note makes new data of a
 * room, and its beams stay where they are. Kept is the last plan of each room, of the `most` whose plans came last; plans are compared by all that
 * stands in them. `known`: what helps to make it, where somebody has it.
 */
export function asBefore<Plan, Made, Known extends unknown[]>(
    most: number, make: (plan: Plan, ...known: Known) => Made,
): (room: string, plan: Plan, ...known: Known) => Made {
    const last = new Map<string, { readonly said: string; readonly made: Made }>();
    return (room, plan, ...known) => {
        const said = JSON.stringify(plan), before = last.get(room);
        if (before?.said === said) return before.made;
        const made = make(plan, ...known);
        last.delete(room);
        last.set(room, { said, made });
        if (last.size > most) last.delete(last.keys().next().value!);
        return made;
    };
}
