import { grouped } from '../../plain/groups.ts';
import { gathered, roomOf, sizeOf } from './layouts.ts';
import type { Cut, CuttingProblem, Layout } from './problem.ts';

/**
 * The same boards, with pieces moved and exchanged between them so that what is left is in fewer and longer offcuts. Of two plans
 * at one cost that with the greater sum of the squares of the kept offcuts is better: one of 6' rather than two of 3'; and of two
 * that leave alike, that whose boards hold fewer different lengths: a board is taken up at the saw's stop once for each. Goes on
 * until no single move or exchange helps; the best of all it need not be.
 * @param shortest the shortest offcut worth keeping, in the problem's unit
 * @param looks how many exchanges are looked at, in all: a large job is left half improved rather than keep anybody waiting
 */
export function withLongerOffcuts(problem: CuttingProblem, layouts: readonly Layout[], shortest: number, looks: number): Layout[] {
    const shop = new Shop(problem, layouts, shortest);
    improveWhole(shop, looks);
    return shop.improvedOnce ? shop.layouts() : [...layouts];
}

/** Ends as soon as there are no more looks: of ten thousand strips even passing over what is left takes long. */
function improveWhole(shop: Shop, looks: number): void {
    const inLane = grouped(shop.strips, ({ lane }) => lane);
    for (let improved = true; improved;) {
        improved = false;
        for (const from of shop.strips) for (const to of inLane.get(from.lane)!) {
            if (from === to) continue;
            if (looks <= 0) return;
            looks -= 1 + from.picks.size * (1 + to.picks.size);
            if (shop.improve(from, to)) improved = true;
        }
    }
}

interface StripLeft { readonly lane: number; readonly section?: number; readonly picks: Map<number, number>; room: number }

class Shop {
    readonly strips: readonly StripLeft[];
    improvedOnce = false;
    private readonly boards: readonly { readonly cut: Cut; readonly strips: readonly StripLeft[] }[];
    private readonly shortest: number;

    constructor(private readonly problem: CuttingProblem, layouts: readonly Layout[], shortest: number) {
        this.shortest = Math.max(1, shortest);
        this.boards = layouts.flatMap(({ times, ...cut }) => Array.from({ length: times }, () => ({
            cut, strips: cut.strips.map(strip => ({ ...strip, picks: new Map(strip.picks), room: roomOf(problem, cut, strip) - sizeOf(problem, strip.picks) })),
        })));
        this.strips = this.boards.flatMap(({ strips }) => strips);
    }

    /** Moves a piece from one strip to another, or exchanges two, where that makes the offcuts longer, or the lengths of a strip fewer. */
    improve(from: StripLeft, to: StripLeft): boolean {
        const { items } = this.problem;
        let best = this.worth(from.room) + this.worth(to.room), fewest = from.picks.size + to.picks.size;
        let move: { given: number; taken?: number } | undefined;
        for (const given of from.picks.keys()) {
            const size = items[given]!.size;
            for (const taken of [undefined, ...to.picks.keys()]) {
                const shift = size - (taken === undefined ? 0 : items[taken]!.size);
                if (shift < 0 || shift > to.room || taken === given) continue;
                const worth = this.worth(from.room + shift) + this.worth(to.room - shift);
                if (worth < best) continue;
                const lengths = from.picks.size + to.picks.size + changeOf(from, to, given) + (taken === undefined ? 0 : changeOf(to, from, taken));
                if (worth > best || lengths < fewest) { best = worth; fewest = lengths; move = { given, taken }; }
            }
        }
        if (!move) return false;
        transfer(move.given, from, to, items[move.given]!.size);
        if (move.taken !== undefined) transfer(move.taken, to, from, items[move.taken]!.size);
        return this.improvedOnce = true;
    }

    layouts(): Layout[] {
        return gathered(this.problem, this.boards.map(({ cut, strips }) => ({
            ...cut, times: 1, strips: strips.map(({ room: _, picks, ...strip }) => ({ ...strip, picks: [...picks].sort(([a], [b]) => a - b) })),
        })));
    }

    private worth(room: number): number {
        return room >= this.shortest ? room * room : 0;
    }
}

/** How many more different lengths two strips hold once one piece has gone over. */
function changeOf(from: StripLeft, to: StripLeft, item: number): number {
    return (to.picks.has(item) ? 0 : 1) - (from.picks.get(item) === 1 ? 1 : 0);
}

function transfer(item: number, from: StripLeft, to: StripLeft, size: number): void {
    const left = from.picks.get(item)! - 1;
    if (left > 0) from.picks.set(item, left); else from.picks.delete(item);
    to.picks.set(item, (to.picks.get(item) ?? 0) + 1);
    from.room += size;
    to.room -= size;
}
