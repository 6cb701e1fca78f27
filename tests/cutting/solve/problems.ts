import { readFileSync } from 'node:fs';
import load from 'highs';
import { Effort } from '../../../src/cutting/solve/effort.ts';
import type { BoardKind, CuttingProblem, Layout } from '../../../src/cutting/solve/problem.ts';
import { prove, type Standing } from '../../../src/cutting/solve/prove.ts';
import { quickPlan } from '../../../src/cutting/solve/quick.ts';
import { solverBy } from '../../../src/worker/highs.ts';
import { drawer } from '../../support/drawer.ts';

export interface Known { readonly name: string; readonly problem: CuttingProblem; readonly optimum: number }

export const solver = solverBy(await load());

/** A problem without ripping. */
function problemOf(sizes: readonly number[], counts: readonly number[], boards: readonly Omit<BoardKind, 'across'>[]): CuttingProblem {
    return { items: sizes.map((size, i) => ({ size, count: counts[i]!, lanes: [0] })), boards: boards.map(kind => ({ ...kind, across: 1 })), strips: [] };
}

/** One piece a size: equal ones become one item. */
export function problemOfPieces(pieces: readonly number[], boards: readonly Omit<BoardKind, 'across'>[]): CuttingProblem {
    const sizes = [...new Set(pieces)].sort((a, b) => b - a);
    return problemOf(sizes, sizes.map(size => pieces.filter(piece => piece === size).length), boards);
}

export function jobs(): Known[] {
    interface Job { name: string; w: number[]; d: number[]; stock: { C: number; cost: number; avail: number | null }[]; optimum: number }
    const read = JSON.parse(readFileSync(new URL('../data/jobs-60-to-400-pieces.json', import.meta.url), 'utf8')) as Job[];
    return read.map(({ name, w, d, stock, optimum }) =>
        ({ name, optimum, problem: problemOf(w, d, stock.map(({ C, cost, avail }) => ({ capacity: C, cost, available: avail }))) }));
}

export function orLibrary(): Known[] {
    const words = readFileSync(new URL('../data/binpack1.txt', import.meta.url), 'utf8').trim().split(/\s+/);
    const problems: Known[] = [];
    let at = 1;
    for (let left = Number(words[0]); left > 0; left--) {
        const name = words[at]!;
        const [capacity, count, optimum] = [Number(words[at + 1]), Number(words[at + 2]), Number(words[at + 3])];
        const pieces = words.slice(at + 4, at + 4 + count).map(Number);
        problems.push({ name, optimum, problem: problemOfPieces(pieces, [{ capacity, cost: 1, available: null }]) });
        at += 4 + count;
    }
    return problems;
}

/** Every board is filled exactly by three pieces, so the fewest boards are known: Falkenauer's triplets, by rule. */
export function triplets(boards: number, seed: number): Known {
    const draw = drawer(seed);
    const pieces = Array.from({ length: boards }, () => {
        const first = 380 + draw(120);
        const second = 250 + draw(Math.floor((1000 - first) / 2) - 250);
        return [first, second, 1000 - first - second];
    }).flat();
    return { name: `triplets-${boards * 3}-${seed}`, optimum: boards, problem: problemOfPieces(pieces, [{ capacity: 1000, cost: 1, available: null }]) };
}

export function quick(problem: CuttingProblem): Layout[] {
    const plan = quickPlan(problem, new Effort(Infinity));
    if (!plan) throw new Error('no plan at all');
    return plan;
}

/** Where the search stands when it ends. */
export function proved(problem: CuttingProblem, steps = 5e7, start: readonly Layout[] = quick(problem)): Standing {
    const search = prove(problem, start, solver, steps);
    for (;;) {
        const { done, value } = search.next();
        if (done) return value;
    }
}
