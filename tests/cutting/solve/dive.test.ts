import { describe, expect, test } from 'vitest';
import { columnOf, type Column, type Weighted } from '../../../src/cutting/solve/columns.ts';
import { dive, jitterOf, remaining, Settled } from '../../../src/cutting/solve/dive.ts';
import { Effort } from '../../../src/cutting/solve/effort.ts';
import type { CuttingProblem } from '../../../src/cutting/solve/problem.ts';
import { checkLayouts } from './check-layouts.ts';
import { solver } from './problems.ts';

const effort = (): Effort => new Effort(Infinity);
const column = (board: number, ...picks: [number, number][]): Column => columnOf({ board, strips: [{ lane: 0, picks }] });
const of = (count: number, size = 10) => ({ size, count, lanes: [0] });
const problemOf = (items: CuttingProblem['items'], boards: CuttingProblem['boards'] = [{ capacity: 12, cost: 10, available: null, across: 1 }]): CuttingProblem => ({ items, boards, strips: [] });
const still = (): number => 0;

/** What is settled of a solution in parts: so many times each content is in it. */
function settled(problem: CuttingProblem, parts: readonly (readonly [Column, number])[], jitter = still): { all: Settled; any: boolean; picks: string[] } {
    const all = new Settled(problem, problem.boards.map(({ available }) => available ?? Infinity), effort());
    const any = all.settle(parts.map(([own, times]): Weighted => ({ column: own, times })), jitter);
    return { all, any, picks: all.layouts.map(({ board, times, strips }) => `${times} x ${board}: ${strips.map(({ picks }) => picks.map(([item, count]) => `${count}*${item}`).join(' ')).join()}`) };
}

describe('whole boards of a solution in parts', () => {
    test('are settled as often as they are in it, a hair short of whole as well, and nothing else then', () => {
        const problem = problemOf([of(5), of(2), of(1)]);
        const { all, any, picks } = settled(problem, [[column(0, [0, 1]), 2.7], [column(0, [1, 1]), 0.9999999], [column(0, [2, 1]), 0.9]]);
        expect([any, picks, all.cost, all.left, all.isDone]).toEqual([true, ['1 x 0: 1*0', '1 x 0: 1*0', '1 x 0: 1*1'], 30, [3, 1, 1], false]);
    });
    test('are not settled when their pieces are gone', () => {
        const { all, picks } = settled(problemOf([of(1)]), [[column(0, [0, 1]), 3]]);
        expect([picks, all.isDone, all.cost]).toEqual([['1 x 0: 1*0'], true, 10]);
    });
    test('where there are none, that which is nearest to one is, and of the others that are near no more than a seventh of all', () => {
        // of 20 at most 3: the nearest, and those from 0.8 on in their order
        const items = Array.from({ length: 20 }, () => of(1)), near = [0.5, 0.81, 0.97, 0.79, 0.9, 0.85];
        const parts = items.map((_, i) => [column(0, [i, 1]), near[i] ?? 0.1] as const);
        expect(settled(problemOf(items), parts).picks).toEqual(['1 x 0: 1*2', '1 x 0: 1*4', '1 x 0: 1*5']);
        // of 6 just one
        expect(settled(problemOf(items.slice(0, 6)), parts.slice(0, 6)).picks).toEqual(['1 x 0: 1*2']);
        // one that is not near is settled only where none is nearer
        expect(settled(problemOf(items), parts.map(([own, times], i) => [own, i === 2 ? 0.97 : times * 0.8] as const)).picks).toEqual(['1 x 0: 1*2']);
        expect(settled(problemOf(items), parts.map(([own], i) => [own, i === 7 ? 0.3 : 0.2] as const)).picks).toEqual(['1 x 0: 1*7']);
    });
    test('of others that are near only those of which all pieces are left', () => {
        const items = Array.from({ length: 20 }, () => of(1));
        const parts = items.map((_, i) => [column(0, [i === 1 ? 0 : i, 1]), i < 3 ? 0.95 - i / 100 : 0.1] as const);
        expect(settled(problemOf(items), parts).picks).toEqual(['1 x 0: 1*0', '1 x 0: 1*2']);
    });
    test('a little by turns, so that another dive settles others', () => {
        const items = [of(1), of(1)], parts = items.map((_, i) => [column(0, [i, 1]), 0.5 - i / 100] as const), turns = [0, 0.3];
        expect(settled(problemOf(items), parts, () => turns.shift()!).picks).toEqual(['1 x 0: 1*1']);
        const [none, first, other] = [0, 1, 2].map(jitterOf), three = (turn: () => number): number[] => [turn(), turn(), turn()];
        expect(three(none!)).toEqual([0, 0, 0]);
        const drawn = [...three(first!), ...three(other!)];
        expect(new Set(drawn).size).toBe(6);
        for (const each of drawn) expect(each >= 0 && each < 0.35).toBe(true);
        expect(three(jitterOf(1))).toEqual(drawn.slice(0, 3));
    });
    test('none can be settled of which no board is left, or no piece', () => {
        const one = problemOf([of(1)], [{ capacity: 12, cost: 10, available: 0, across: 1 }]);
        expect(settled(one, [[column(0, [0, 1]), 1]]).any).toBe(false);
        expect(settled(problemOf([of(0), of(1)]), [[column(0, [0, 1]), 1]]).any).toBe(false);
    });
    test('come from the cheapest board that holds what is left on them', () => {
        const boards = [{ capacity: 30, cost: 20, available: null, across: 1 }, { capacity: 12, cost: 9, available: 1, across: 1 }];
        const { all, picks } = settled(problemOf([of(2)], boards), [[column(0, [0, 3]), 1]]);
        expect([picks, all.cost, all.free]).toEqual([['1 x 0: 2*0'], 20, [Infinity, 1]]);
        const single = settled(problemOf([of(1)], boards), [[column(0, [0, 3]), 1]]);
        expect([single.picks, single.all.cost, single.all.free]).toEqual([['1 x 1: 1*0'], 9, [Infinity, 0]]);
    });
});

test('of a content what can still be used: all of it, what is left of its pieces, or none', () => {
    const problem = problemOf([of(5), of(5), of(5)]), own = column(0, [0, 2], [1, 1]);
    const left = (...counts: number[]) => remaining(problem, own, counts, [1])?.gives;
    expect(remaining(problem, own, [2, 1, 0], [1])).toBe(own);
    expect([left(1, 1, 9), left(0, 3, 9), left(0, 0, 9), remaining(problem, own, [2, 1, 0], [0])]).toEqual([[[0, 1], [1, 1]], [[1, 1]], undefined, undefined]);
});

test('what is worth nothing in the solution is planned all the same', () => {
    const problem = problemOf([of(1), of(1, 2)]), own = column(0, [0, 1]);
    const start = { used: [{ column: own, times: 1 }], columns: [own], values: [10, 0] };
    const plan = dive(problem, start, solver, effort(), { free: [Infinity], below: 100, target: 20, variant: 0 });
    expect(checkLayouts(problem, plan!)).toBe(20);
});

// the first content comes out of the cheaper board, of which there is one: it is gone by the time that the second is to be cut from it
test('a board that was taken for another content is not taken twice', () => {
    const problem = problemOf([of(1), of(1, 9)], [{ capacity: 12, cost: 10, available: null, across: 1 }, { capacity: 12, cost: 5, available: 1, across: 1 }]);
    const used = [0, 1].map(item => ({ column: column(item, [item, 1]), times: 1 })), start = { used, columns: used.map(each => each.column), values: [5, 5] };
    const plan = dive(problem, start, solver, effort(), { free: [Infinity, 1], below: 100, target: 0, variant: 0 });
    expect(checkLayouts(problem, plan!)).toBe(15);
});
