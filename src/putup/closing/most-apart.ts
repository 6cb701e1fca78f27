/**
 * Of things that are tied in pairs as many as there are no two of which are tied. `atMost`: there are no more; with things that fall into two sides
 * (lines of two directions always do) just as many as are told. By pairs: each pair of a largest set of pairs without a thing in common has one
 * at least that is left away (König), found with augmenting paths.
 */
export function mostApart(things: readonly number[], ties: readonly (readonly [number, number])[]): Apart {
    const tied = new Map<number, number[]>(things.map(thing => [thing, []]));
    for (const [a, b] of ties) { tied.get(a)!.push(b); tied.get(b)!.push(a); }
    const side = sidesOf(things, tied);
    if (!side) return greedily(things, tied);
    const left = things.filter(thing => side.get(thing) === 0), mate = new Map<number, number>();
    for (const start of left) pairUp(start, tied, mate);
    // from what has no mate on the left, along ties out and pairs back: what is reached on the left, and what is not on the right
    const reached = new Set(left.filter(thing => !mate.has(thing))), open = [...reached];
    for (let i = 0; i < open.length; i++) {
        const next = side.get(open[i]!) === 0 ? tied.get(open[i]!)! : [mate.get(open[i]!)!];
        for (const thing of next) if (!reached.has(thing)) { reached.add(thing); open.push(thing); }
    }
    const apart = things.filter(thing => (side.get(thing) === 0) === reached.has(thing));
    return { apart, atMost: apart.length };
}

interface Apart { readonly apart: readonly number[]; readonly atMost: number }

/** One more pair with `start` in it, if there is a way: out by a tie, back by a pair, and out again. */
function pairUp(start: number, tied: ReadonlyMap<number, readonly number[]>, mate: Map<number, number>): void {
    const cameFrom = new Map<number, number>(), open = [start];
    for (let i = 0; i < open.length; i++) {
        for (const other of tied.get(open[i]!)!) {
            if (cameFrom.has(other)) continue;
            cameFrom.set(other, open[i]!);
            const next = mate.get(other);
            if (next !== undefined) { open.push(next); continue; }
            for (let end: number | undefined = other; end !== undefined;) {
                const from: number = cameFrom.get(end)!, before = mate.get(from);
                mate.set(end, from);
                mate.set(from, end);
                end = from === start ? undefined : before;
            }
            return;
        }
    }
}

function sidesOf(things: readonly number[], tied: ReadonlyMap<number, readonly number[]>): ReadonlyMap<number, 0 | 1> | undefined {
    const side = new Map<number, 0 | 1>();
    for (const start of things) {
        if (side.has(start)) continue;
        side.set(start, 0);
        const open = [start];
        for (let i = 0; i < open.length; i++) {
            const own = side.get(open[i]!)!;
            for (const other of tied.get(open[i]!)!) {
                if (side.get(other) === own) return undefined;
                if (!side.has(other)) { side.set(other, own === 0 ? 1 : 0); open.push(other); }
            }
        }
    }
    return side;
}

function greedily(things: readonly number[], tied: ReadonlyMap<number, readonly number[]>): Apart {
    const gone = new Set<number>(), apart: number[] = [], paired = new Set<number>();
    for (const thing of [...things].sort((a, b) => tied.get(a)!.length - tied.get(b)!.length)) {
        if (gone.has(thing)) continue;
        apart.push(thing);
        for (const other of tied.get(thing)!) gone.add(other);
    }
    for (const thing of things) {
        const other = paired.has(thing) ? undefined : tied.get(thing)!.find(each => !paired.has(each));
        if (other !== undefined) { paired.add(thing); paired.add(other); }
    }
    return { apart, atMost: things.length - paired.size / 2 };
}
