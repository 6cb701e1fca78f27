import { canCut, pieceCount, WHOLE, type BoardKind, type Cut, type CuttingProblem, type Layout, type Picks, type StripCut } from './problem.ts';

/** What is wrong with a plan, in words for whoever mends the solver; undefined where every piece is cut once and every board holds its pieces. */
export function faultOf(problem: CuttingProblem, layouts: readonly Layout[]): string | undefined {
    const { items, boards } = problem;
    const cut = items.map(() => 0);
    const used = boards.map(() => 0);
    for (const layout of layouts) {
        const { board, strips, times } = layout;
        const kind = boards[board];
        if (!kind || !(times > 0)) return `board kind ${board} x ${times}`;
        used[board]! += times;
        const fault = faultOfCut(problem, layout, kind);
        if (fault !== undefined) return fault;
        for (const { lane, picks } of strips)
            for (const [item, count] of picks) {
                if (!items[item]?.lanes.includes(lane)) return `item ${item} in lane ${lane}`;
                cut[item]! += count * times;
            }
    }
    if (cut.some((count, i) => count !== items[i]!.count)) return `${cut.reduce((a, b) => a + b, 0)} of ${pieceCount(problem)} pieces, or not each once`;
    if (used.some((count, k) => count > (boards[k]!.available ?? Infinity))) return 'more boards than there are';
    return undefined;
}

function faultOfCut(problem: CuttingProblem, cut: Cut, kind: BoardKind): string | undefined {
    const { strips, sections = [] } = cut;
    const whole = strips.filter(({ lane }) => lane === WHOLE);
    const atLength = strips.filter(({ lane, section }) => lane !== WHOLE && section === undefined);
    if (whole.length > 1) return 'a whole board in several strips';
    if (whole.some(({ lane }) => !canCut(kind, lane))) return 'the whole width of a board of which nothing is cut in its whole width';
    if (atLength.length > 0 && whole.length + sections.length > 0) return 'a board ripped over its whole length and cut across';
    if (lengthNeeded(problem, cut) > kind.capacity) return 'more than the board is long';
    if (sections.some(size => size < (problem.shortestSection ?? Infinity))) return 'a section too short to be ripped';
    for (const abreast of [atLength, ...sections.map((_, s) => strips.filter(({ section }) => section === s))])
        if (abreast.reduce((sum, { lane }) => sum + problem.strips[lane - 1]!, 0) > kind.across) return 'strips too wide for the board';
    if (strips.some(({ section, picks }) => section !== undefined && !(sizeOf(problem, picks) <= sections[section]!))) return 'a strip too long for its section';
    return undefined;
}

export function sizeOf({ items }: CuttingProblem, picks: Picks): number {
    return picks.reduce((sum, [item, count]) => sum + items[item]!.size * count, 0);
}

/** The length a board needs for its cut: what is cut across one after the other, or the longest strip. */
export function lengthNeeded(problem: CuttingProblem, { strips, sections }: Omit<Cut, 'board'>): number {
    const across = (sections ?? []).reduce((a, b) => a + b, 0);
    return strips.filter(({ section }) => section === undefined).reduce((most, { picks }) => Math.max(most, across + sizeOf(problem, picks)), across);
}

/** How many of its sections are at least as long as `from`; a board that is ripped over its whole length is one, as long as its longest strip. */
export function sectionsFrom(problem: CuttingProblem, cut: Omit<Cut, 'board'>, from: number): number {
    return sectionLengths(problem, cut).filter(size => size >= from).length;
}

export function sectionLengths(problem: CuttingProblem, { strips, sections }: Omit<Cut, 'board'>): readonly number[] {
    if (sections) return sections;
    const ripped = strips.filter(({ lane }) => lane !== WHOLE);
    return ripped.length > 0 ? [Math.max(problem.shortestSection ?? 0, ...ripped.map(({ picks }) => sizeOf(problem, picks)))] : [];
}

/** How long the strip may be: what is left of the board beside its sections, or its section. */
export function roomOf({ boards }: CuttingProblem, { board, sections = [] }: Cut, { lane, section }: StripCut): number {
    if (section !== undefined) return sections[section]!;
    return boards[board]!.capacity - (lane === WHOLE ? sections.reduce((a, b) => a + b, 0) : 0);
}

/** How many of each item are cut. */
export function picksOf({ strips }: Pick<Cut, 'strips'>): [item: number, count: number][] {
    const counts = new Map<number, number>();
    for (const { picks } of strips) for (const [item, count] of picks) counts.set(item, (counts.get(item) ?? 0) + count);
    return [...counts].sort(([a], [b]) => a - b);
}

/**
 * The same cut without strips that nothing is cut from; sections that can be ripped together become one, each is as long as its longest strip,
 * and a section that is alone on its board is the board.
 */
export function tidied<T extends Cut>(problem: CuttingProblem, cut: T): T {
    const filled = cut.strips.filter(({ picks }) => picks.length > 0);
    if (!cut.sections) return filled.length === cut.strips.length ? cut : { ...cut, strips: filled };
    let alike = cut.sections.map((_, s) => filled.filter(({ section }) => section === s).sort((a, b) => a.lane - b.lane)).filter(own => own.length > 0);
    for (let first = 0; first < alike.length; first++) {
        for (let other = first + 1; other < alike.length; other++) {
            const one = asOne(alike[first]!, alike[other]!);
            if (one.reduce((sum, { lane }) => sum + problem.strips[lane - 1]!, 0) > problem.boards[cut.board]!.across) continue;
            alike = [...alike.slice(0, first), one, ...alike.slice(first + 1).filter(own => own !== alike[other])];
            other = first;
        }
    }
    const whole = filled.filter(({ section }) => section === undefined);
    const { sections: _, ...plain } = cut;
    if (alike.length === 0) return { ...plain, strips: whole } as unknown as T;
    if (alike.length === 1 && whole.length === 0)
        return { ...plain, strips: alike[0]!.map(({ lane, picks }) => ({ lane, picks })) } as unknown as T;
    const ripped = alike.map(strips => ({
        strips, size: Math.max(problem.shortestSection ?? 0, ...strips.map(({ picks }) => sizeOf(problem, picks))),
    })).sort((a, b) => b.size - a.size);
    return {
        ...cut, sections: ripped.map(({ size }) => size),
        strips: [...whole, ...ripped.flatMap(({ strips }, section) => strips.map(strip => ({ ...strip, section })))],
    };
}

/** The strips of two sections behind each other, lane by lane. */
function asOne(a: readonly StripCut[], b: readonly StripCut[]): StripCut[] {
    const lanes = [...new Set([...a, ...b].map(({ lane }) => lane))].sort((x, y) => x - y);
    return lanes.flatMap(lane => {
        const [own, other] = [a, b].map(strips => strips.filter(strip => strip.lane === lane)) as [StripCut[], StripCut[]];
        return Array.from({ length: Math.max(own.length, other.length) }, (_, i) => (
            { ...(own[i] ?? other[i])!, picks: picksOf({ strips: [own[i], other[i]].filter(strip => strip !== undefined) }) }));
    });
}

/** What the cut is told apart by. */
export function keyOfCut({ board, strips, sections = [] }: Cut): string {
    return `${board}:${sections.join(' ')}:${strips.map(s => `${s.lane}/${s.section ?? ''}:${s.picks.join(' ')}`).join('|')}`;
}

/** Layouts that are alike become one; what is empty goes. */
export function gathered(problem: CuttingProblem, layouts: readonly Layout[]): Layout[] {
    const byKey = new Map<string, Layout>();
    for (const each of layouts) {
        const layout = tidied(problem, each);
        if (layout.strips.length === 0 || layout.times === 0) continue;
        const key = keyOfCut(layout);
        byKey.set(key, { ...layout, times: layout.times + (byKey.get(key)?.times ?? 0) });
    }
    return [...byKey.values()];
}

/** The cut with at most so many of each item as are wanted, which it takes from `left`. */
export function wantedOf<T extends Cut>(cut: T, left: number[]): T {
    return {
        ...cut, strips: cut.strips.map(strip => ({
            ...strip, picks: strip.picks.flatMap(([item, count]): [number, number][] => {
                const wanted = Math.min(count, left[item]!);
                left[item]! -= wanted;
                return wanted > 0 ? [[item, wanted]] : [];
            }),
        })),
    };
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
        const cut = tidied(problem, { ...wantedOf(layout, left), times: 1 });
        const board = cheapestFor(problem, cut, free);
        if (board !== layout.board) { free[layout.board]! += 1; free[board]! -= 1; }
        return { ...cut, board };
    }));
    return gathered(problem, boards);
}

/** The cheapest board the cut comes out of: the one it is on, unless there is a cheaper. */
export function cheapestFor(problem: CuttingProblem, cut: Cut, free: readonly number[]): number {
    const needed = lengthNeeded(problem, cut);
    let best = cut.board;
    problem.boards.forEach((kind, k) => {
        const isCheaper = kind.cost < problem.boards[best]!.cost && free[k]! > 0;
        if (isCheaper && kind.capacity >= needed && faultOfCut(problem, { ...cut, board: k }, kind) === undefined) best = k;
    });
    return best;
}
