// Jobs of boards for the benchmark, of kinds that nothing was tuned on: made from seeds that stand here alone.
import type { CuttingProblem } from '../../src/cutting/solve/problem.ts';

/** 8' to 16' less 1/2" of trim, in 1/32" with a kerf of 1/8"; dollars a foot that rise with the length. */
const FEET = [8, 10, 12, 14, 16];
const YARD = FEET.map((feet, i) => ({ capacity: feet * 384 - 12, cost: Math.round(feet * (160 + 9 * i) / 10) * 10 + i, available: null, across: 1 }));

export function jobKinds(): [string, CuttingProblem[]][] {
    return [
        ['60 pieces', seeds(30, 5000).map(seed => job(60, seed))],
        ['60 pieces with three kinds of offcuts', seeds(20, 5100).map(seed => withOffcuts(job(60, seed), seed))],
        ['60 pieces, a third ripped, sections too', seeds(20, 5200).map(seed => ripped(60, seed))],
        ['150 pieces', seeds(10, 5300).map(seed => job(150, seed))],
        ['250 pieces', seeds(10, 5400).map(seed => job(250, seed))],
        ['400 pieces', seeds(10, 5500).map(seed => job(400, seed))],
        ['one board length, 120 pieces', seeds(20, 5600).map(seed => uniform(120, seed))],
        ['one board length, triplets of 60', seeds(10, 5700).map(seed => triplets(20, seed))],
        ['5000 pieces, 240 lengths', seeds(2, 5800).map(seed => job(5000, seed, 240))],
        ['5000 pieces, 700 lengths', seeds(2, 5900).map(seed => job(5000, seed, 700))],
    ];
}

export const seeds = (count: number, from: number): number[] => Array.from({ length: count }, (_, i) => from + i);

function drawer(seed: number): (n: number) => number {
    let state = Math.imul(seed, 2654435761) >>> 0;
    return n => {
        state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
        return Math.floor(state / 2 ** 32 * n);
    };
}

function problemOf(pieces: readonly { size: number; lanes: readonly number[] }[], boards: CuttingProblem['boards'], strips: readonly number[] = []): CuttingProblem {
    const items = new Map<string, { size: number; count: number; lanes: readonly number[] }>();
    for (const { size, lanes } of pieces) {
        const key = `${size} ${lanes.join(' ')}`;
        items.set(key, { size, lanes, count: (items.get(key)?.count ?? 0) + 1 });
    }
    return { items: [...items.values()].sort((a, b) => b.size - a.size), boards, strips };
}

/** Bays of some lengths repeated, short blocks many times, a few odd lengths: what a ceiling is cut from. */
export function job(count: number, seed: number, lengths = 8 + Math.round(count / 8)): CuttingProblem {
    const draw = drawer(seed);
    const sizes = Array.from({ length: lengths }, () => (draw(3) === 0 ? 250 + draw(500) : 700 + draw(4600)));
    return problemOf(Array.from({ length: count }, (_, i) => ({ size: sizes[i < lengths ? i : draw(lengths)]!, lanes: [0] })), YARD);
}

function withOffcuts(problem: CuttingProblem, seed: number): CuttingProblem {
    const draw = drawer(seed + 1);
    return { ...problem, boards: [...[0, 1, 2].map(() => ({ capacity: 800 + draw(2500), cost: 0, available: 1 + draw(3), across: 1 })), ...problem.boards] };
}

/** Widths of 3/4" and 2 1/4" from boards of 5 1/2" with a kerf of 1/8", in 1/8". */
function ripped(count: number, seed: number): CuttingProblem {
    const draw = drawer(seed);
    const sizes = Array.from({ length: 14 }, () => 400 + draw(4600));
    const lanes = [[0], [0], [0], [0], [1], [2]];
    // a section of 12" and a kerf at the least
    return { ...problemOf(Array.from({ length: count }, () => { const i = draw(sizes.length); return { size: sizes[i]!, lanes: lanes[i % lanes.length]! }; }),
        YARD.map(kind => ({ ...kind, across: 45 })), [7, 19]), shortestSection: 388 };
}

function uniform(count: number, seed: number): CuttingProblem {
    const draw = drawer(seed);
    return problemOf(Array.from({ length: count }, () => ({ size: 20 + draw(81), lanes: [0] })), [{ capacity: 150, cost: 1, available: null, across: 1 }]);
}

function triplets(boards: number, seed: number): CuttingProblem {
    const draw = drawer(seed);
    return problemOf(Array.from({ length: boards }, () => {
        const first = 380 + draw(120);
        const second = 250 + draw(Math.floor((1000 - first) / 2) - 250);
        return [first, second, 1000 - first - second];
    }).flat().map(size => ({ size, lanes: [0] })), [{ capacity: 1000, cost: 1, available: null, across: 1 }]);
}
