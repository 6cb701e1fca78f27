import { canCut, pieceCount, WHOLE, type CuttingProblem, type Layout, type Picks } from './problem.ts';

/** What is wrong with a plan, in words for whoever mends the solver; undefined where every piece is cut once and every board holds its pieces. */
export function faultOf(problem: CuttingProblem, layouts: readonly Layout[]): string | undefined {
    const { items, boards } = problem;
    const cut = items.map(() => 0);
    const used = boards.map(() => 0);
    for (const { board, strips, times } of layouts) {
        const kind = boards[board];
        if (!kind || !(times > 0)) return `board kind ${board} x ${times}`;
        used[board]! += times;
        const ripped = strips.some(strip => strip.lane > 0);
        if (!ripped && strips.length !== 1) return 'a whole board in several strips';
        if (ripped && strips.reduce((sum, s) => sum + (problem.strips[s.lane - 1] ?? Infinity), 0) > kind.across) return 'strips too wide for the board';
        for (const { lane, picks } of strips) {
            if (!canCut(kind, lane)) return 'the whole width of a sheet that is ripped across';
            if (sizeOf(problem, picks) > kind.capacity) return 'a strip too long for the board';
            for (const [item, count] of picks) {
                if (!items[item]?.lanes.includes(lane)) return `item ${item} in lane ${lane}`;
                cut[item]! += count * times;
            }
        }
    }
    if (cut.some((count, i) => count !== items[i]!.count)) return `${cut.reduce((a, b) => a + b, 0)} of ${pieceCount(problem)} pieces, or not each once`;
    if (used.some((count, k) => count > (boards[k]!.available ?? Infinity))) return 'more boards than there are';
    return undefined;
}

export function sizeOf({ items }: CuttingProblem, picks: Picks): number {
    return picks.reduce((sum, [item, count]) => sum + items[item]!.size * count, 0);
}

/** The length a layout needs: that of its longest strip. */
export function lengthNeeded(problem: CuttingProblem, layout: Pick<Layout, 'strips'>): number {
    return Math.max(...layout.strips.map(strip => sizeOf(problem, strip.picks)));
}

/** Layouts that are alike become one; what is empty goes. */
export function gathered(layouts: readonly Layout[]): Layout[] {
    const byKey = new Map<string, Layout>();
    for (const layout of layouts) {
        const strips = layout.strips.filter(strip => strip.picks.length > 0);
        if (strips.length === 0 || layout.times === 0) continue;
        const key = `${layout.board}:${strips.map(s => `${s.lane}:${s.picks.join(' ')}`).join('|')}`;
        const before = byKey.get(key);
        byKey.set(key, { ...layout, strips, times: layout.times + (before?.times ?? 0) });
    }
    return [...byKey.values()];
}

/**
 * A plan without the pieces it cuts too often, each of its boards exchanged for the cheapest that holds what is left on it.
 * `demand` is how many of each item are wanted; boards that nothing is left on are not bought.
 */
export function trimmed(problem: CuttingProblem, layouts: readonly Layout[], demand: readonly number[]): Layout[] {
    const left = [...demand];
    const free = problem.boards.map(kind => kind.available ?? Infinity);
    for (const { board, times } of layouts) free[board]! -= times;
    const boards = layouts.flatMap(layout => Array.from({ length: layout.times }, (): Layout => {
        const strips = layout.strips.map(({ lane, picks }) => ({
            lane, picks: picks.flatMap(([item, count]): [number, number][] => {
                const wanted = Math.min(count, left[item]!);
                left[item]! -= wanted;
                return wanted > 0 ? [[item, wanted]] : [];
            }),
        }));
        const board = cheapestFor(problem, { ...layout, strips }, free);
        if (board !== layout.board) { free[layout.board]! += 1; free[board]! -= 1; }
        return { board, strips, times: 1 };
    }));
    return gathered(boards);
}

/** The cheapest board the strips come out of: the one they are on, unless there is a cheaper. */
export function cheapestFor(problem: CuttingProblem, layout: Layout, free: readonly number[]): number {
    const needed = lengthNeeded(problem, layout);
    const across = layout.strips.reduce((sum, { lane }) => sum + (lane === WHOLE ? 0 : problem.strips[lane - 1]!), 0);
    const whole = layout.strips.some(strip => strip.lane === WHOLE);
    let best = layout.board;
    problem.boards.forEach((kind, k) => {
        const fits = kind.capacity >= needed && kind.across >= across && !(whole && kind.ripOnly);
        if (fits && free[k]! > 0 && kind.cost < problem.boards[best]!.cost) best = k;
    });
    return best;
}
