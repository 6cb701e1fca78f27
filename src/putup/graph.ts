import { grouped } from '../plain/groups.ts';
import { ringsOf } from '../plain/rings.ts';
import type { Before, Cycle } from './model.ts';

/** A circle among what waits for each other, if there is one: the shortest through the first piece that can never come. Nothing recurses. */
export function cycleIn(stuck: readonly string[], befores: readonly Before[]): Cycle | null {
    const among = new Set(stuck), waits = grouped(befores.filter(({ first, then }) => among.has(first) && among.has(then)), ({ then }) => then);
    // from any stuck piece back along what it waits for: the first that comes twice lies on a circle
    const [start] = stuck;
    if (start === undefined) return null;
    const seen = new Set<string>();
    let on = start;
    while (!seen.has(on)) {
        seen.add(on);
        const next = waits.get(on)?.[0];
        if (!next) return null;
        on = next.first;
    }
    return around(on, waits);
}

/** Those of the edges that are in a circle: what comes first waits in the end for what comes after it. */
export function inCircles(befores: readonly Before[]): Set<Before> {
    const after = grouped(befores, ({ first }) => first), rings = ringsOf(after.keys(), id => (after.get(id) ?? []).map(({ then }) => then));
    return new Set(befores.filter(({ first, then }) => rings.has(first) && rings.get(first) === rings.get(then)));
}

/** A circle of pieces alone: what stands in it for many pieces is left out, and the piece after it waits for the one before. */
export function ofPieces(cycle: Cycle, isPiece: (id: string) => boolean): Cycle {
    const start = cycle.findIndex(({ first }) => isPiece(first)), edges = [...cycle.slice(start), ...cycle.slice(0, start)], merged: Before[] = [];
    for (const edge of edges) {
        if (isPiece(edge.first)) merged.push(edge);
        else merged[merged.length - 1] = { ...merged.at(-1)!, then: edge.then };
    }
    return merged;
}

/** The shortest way from a piece back to itself, in the order of putting up. */
function around(home: string, waits: ReadonlyMap<string, readonly Before[]>): Cycle | null {
    const cameBy = new Map<string, Before>();
    const row = [home];
    for (let i = 0; i < row.length; i++) {
        for (const edge of waits.get(row[i]!) ?? []) {
            if (edge.first === home) return [edge, ...wayBack(row[i]!, home, cameBy)];
            if (cameBy.has(edge.first)) continue;
            cameBy.set(edge.first, edge);
            row.push(edge.first);
        }
    }
    return null;
}

function wayBack(from: string, home: string, cameBy: ReadonlyMap<string, Before>): Before[] {
    const way: Before[] = [];
    for (let on = from; on !== home;) {
        const edge = cameBy.get(on)!;
        way.push(edge);
        on = edge.then;
    }
    return way;
}
