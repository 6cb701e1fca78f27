import { grouped } from '../../plain/groups.ts';

/**
 * Bottoms as far as it matters which of them have to be there before others: lines as strands that meet, and at each meeting one of two
 * runs through. Plain data, without a length: whether a piece closes depends on which of its ends take biscuits, and which have room behind them.
 */
export interface Web { readonly strands: readonly Strand[]; readonly meetings: readonly Meeting[] }

/** `biscuits`: it is butted there against what runs along a wall. `free`: there is room behind it, more than a biscuit sticks out. `tight`: there is none. */
export type Tie = 'biscuits' | 'free' | 'tight';
export interface Strand {
    readonly name: string;
    /** Whether there are biscuits where its bottom is cut. */
    readonly biscuits: boolean;
    /** What is at its beginning and its end; null where a meeting decides. */
    readonly ends: readonly [Tie | null, Tie | null];
}

/**
 * Two strands that cross; a tee, where the second ends at the first; a ring, where both end at each other. The one that runs through at a tee ends tight
 * at the far edge of the bar, and in a ring at the outer edge of the other.
 */
export interface Meeting {
    readonly kind: 'crossing' | 'tee' | 'ring';
    readonly of: readonly [number, number];
    /** Where it is along each of them; of one that ends there the end instead. */
    readonly at: readonly [Place, Place];
    /** Which of the two runs through as it is said. */
    readonly now: Which;
}
export type Which = 0 | 1;
export type Place = { readonly along: number } | { readonly end: Which };
/** What runs through at every meeting, in their order; null: not decided. */
export type Throughs = readonly (Which | null)[];

/** One piece of a strand: the how manieth between its cuts, from 0. */
interface StrandPiece { readonly strand: number; readonly nth: number }
export interface Judged {
    /** Pieces with biscuits at one end at least, and no room for them at either. */
    readonly closing: number;
    /** Pieces that wait for each other in a ring, each for the one after it; null where there is none, so that an order can be found. */
    readonly cycle: readonly StrandPiece[] | null;
}

/** What a choice comes to. Meetings that are not decided cut both, and nothing waits there: so what goes round in a ring all the same always will. */
export function judge(web: Web, throughs: Throughs): Judged {
    const cut = cutsOf(web, throughs);
    return { closing: web.strands.reduce((sum, strand, i) => sum + closingOn(strand, cut[i]!), 0), cycle: cycleIn(waitsOf(web, throughs, cut)) };
}

/** Where a strand is cut, in order, and what its ends are. */
interface Cuts { readonly along: readonly number[]; readonly ends: readonly [Tie, Tie] }

function cutsOf({ strands, meetings }: Web, throughs: Throughs): Cuts[] {
    const along = strands.map((): number[] => []), ends = strands.map(({ ends: [from, to] }): [Tie, Tie] => [from ?? 'tight', to ?? 'tight']);
    meetings.forEach(({ of, at }, m) => {
        for (const i of [0, 1] as const) {
            const place = at[i], isCut = throughs[m] !== i, { biscuits } = strands[of[i]]!;
            if ('along' in place) { if (isCut) along[of[i]]!.push(place.along); } else if (isCut && biscuits) ends[of[i]]![place.end] = 'biscuits';
        }
    });
    return along.map((places, i) => ({ along: [...new Set(places)].sort((a, b) => a - b), ends: ends[i]! }));
}

function closingOn({ biscuits }: Strand, { along, ends }: Cuts): number {
    if (!biscuits) return 0;
    let closing = 0;
    for (let nth = 0; nth <= along.length; nth++) {
        const own: readonly Tie[] = [nth === 0 ? ends[0] : 'biscuits', nth === along.length ? ends[1] : 'biscuits'];
        if (own.includes('biscuits') && !own.includes('free')) closing++;
    }
    return closing;
}

interface Wait { readonly piece: number; readonly before: number }
interface Waits { readonly count: number; readonly waits: readonly Wait[]; readonly pieceOf: (node: number) => StrandPiece }

/** Every piece that takes biscuits waits for the one that runs through there. */
function waitsOf({ strands, meetings }: Web, throughs: Throughs, cut: readonly Cuts[]): Waits {
    const first: number[] = [];
    let count = 0;
    for (const { along } of cut) { first.push(count); count += along.length + 1; }
    const nodeAt = (strand: number, place: Place, after: boolean): number => {
        const { along } = cut[strand]!;
        if ('end' in place) return first[strand]! + (place.end === 0 ? 0 : along.length);
        const before = along.findIndex(at => (after ? at > place.along : at >= place.along));
        return first[strand]! + (before < 0 ? along.length : before);
    };
    const waits = meetings.flatMap(({ of, at }, m): Wait[] => {
        const through = throughs[m] ?? null;
        if (through === null) return [];
        const butting = through === 0 ? 1 : 0;
        if (!strands[of[butting]]!.biscuits) return [];
        const before = nodeAt(of[through], at[through], false), place = at[butting];
        const pieces = [nodeAt(of[butting], place, false), ...'along' in place ? [nodeAt(of[butting], place, true)] : []];
        return pieces.map(piece => ({ piece, before }));
    });
    const strandOf = (node: number): number => { const next = first.findIndex(start => start > node); return (next < 0 ? first.length : next) - 1; };
    return { count, waits, pieceOf: node => ({ strand: strandOf(node), nth: node - first[strandOf(node)]! }) };
}

function cycleIn({ count, waits, pieceOf }: Waits): StrandPiece[] | null {
    const ring = ringIn(count, waits.map(({ piece, before }) => [piece, before]));
    return ring && ring.map(pieceOf);
}

/**
 * Of things that wait for others, a ring of such as wait each for the next, or null: what waits for nothing is taken away until nothing is
 * left, or only rings and what waits for them.
 */
export function ringIn(count: number, waits: readonly (readonly [waiting: number, before: number])[]): number[] | null {
    const open = new Array<number>(count).fill(0), freed = grouped(waits, ([, before]) => before);
    for (const [waiting] of waits) open[waiting]!++;
    const ready = open.flatMap((number, i) => (number === 0 ? [i] : []));
    for (let i = 0; i < ready.length; i++) {
        for (const [waiting] of freed.get(ready[i]!) ?? []) if (--open[waiting]! === 0) ready.push(waiting);
    }
    if (ready.length === count) return null;
    const waitsFor = new Map(waits.filter(([waiting, before]) => open[waiting]! > 0 && open[before]! > 0));
    const way: number[] = [], seen = new Map<number, number>();
    for (let at = open.findIndex(number => number > 0); ; at = waitsFor.get(at)!) {
        if (seen.has(at)) return way.slice(seen.get(at));
        seen.set(at, way.length);
        way.push(at);
    }
}
