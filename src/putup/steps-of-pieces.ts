import type { PutUp, Step } from './model.ts';

/** The number of the step of every piece, by its name in the cut list. */
export function stepsOfPieces(steps: readonly Step[]): ReadonlyMap<string, number> {
    return new Map(steps.flatMap(({ number, placings }) => placings.map(({ piece }) => [piece.id, number] as const)));
}

/** The steps that each has to wait for: for what it needs, and for what several crews keep in turn. */
export function waitsOf({ steps, before, inTurn }: Pick<PutUp, 'steps' | 'before' | 'inTurn'>): ReadonlyMap<number, ReadonlySet<number>> {
    const stepOf = stepsOfPieces(steps);
    const waits = new Map<number, Set<number>>(steps.map(({ number }) => [number, new Set()]));
    // what stands for many pieces waits for all of theirs
    const knots = new Map<string, Set<number>>();
    for (const { first, then } of before) {
        const from = stepOf.get(first);
        if (!stepOf.has(then) && from !== undefined) knots.set(then, (knots.get(then) ?? new Set()).add(from));
    }
    for (const { first, then } of before) {
        const to = stepOf.get(then);
        if (to === undefined) continue;
        for (const from of stepOf.has(first) ? [stepOf.get(first)!] : knots.get(first) ?? []) if (from !== to) waits.get(to)!.add(from);
    }
    for (const { first, then } of inTurn) waits.get(then)!.add(first);
    return waits;
}
