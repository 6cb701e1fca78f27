import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Effort } from '../../../src/cutting/solve/effort.ts';
import { pieceCount, type CuttingProblem } from '../../../src/cutting/solve/problem.ts';
import { quickPlan } from '../../../src/cutting/solve/quick.ts';
import { onScarceBoards } from '../../../src/cutting/solve/scarce.ts';
import { runs } from '../../support/full.ts';
import { checkLayouts } from './check-layouts.ts';
import { leastCost } from './exhaustive.ts';
import { from } from './small-jobs.ts';

/** Nothing but boards of which there are few; most of such jobs have no plan, and those that have one leave little to choose. */
const lanes = fc.constantFrom([0], [1], [2], [0, 1], [0, 2]);
const kind = fc.record({ capacity: from(8, 30), cost: from(0, 40), available: fc.constantFrom(1, 1, 2, 2, 3), across: from(5, 12) });
const scarce: fc.Arbitrary<CuttingProblem> = fc.tuple(
    fc.array(fc.record({ size: from(1, 20), count: from(1, 3), lanes }), { minLength: 2, maxLength: 5 }),
    fc.array(fc.tuple(kind, fc.boolean()).map(([own, ripOnly]) => (ripOnly ? { ...own, ripOnly } : own)), { minLength: 1, maxLength: 3 }),
    fc.tuple(from(2, 6), from(2, 6)), fc.option(from(1, 12), { nil: undefined }),
).map(([items, boards, strips, shortestSection]) => ({ items, boards, strips, ...shortestSection !== undefined && { shortestSection } }));

test('a plan is found wherever there is one, as trying everything tells', () => {
    let found = 0;
    fc.assert(fc.property(scarce, problem => {
        fc.pre(pieceCount(problem) <= 8);
        const least = leastCost(problem), plan = quickPlan(problem, new Effort(Infinity));
        expect(plan !== undefined, 'a plan').toBe(Number.isFinite(least));
        if (!plan) return;
        expect(checkLayouts(problem, plan)).toBeGreaterThanOrEqual(least);
        found++;
    }), { seed: 77, numRuns: runs(600, 40) });
    expect(found).toBeGreaterThan(runs(600, 40) / 4);
});

test('what other boards hold is left to plan, and so are the boards that nothing is on', () => {
    // 19 comes out of nothing but the two boards of 20; 9 out of any
    const problem: CuttingProblem = {
        items: [{ size: 19, count: 1, lanes: [0] }, { size: 9, count: 4, lanes: [0] }], strips: [],
        boards: [{ capacity: 10, cost: 5, available: null, across: 1 }, { capacity: 20, cost: 9, available: 2, across: 1 }],
    };
    const layouts = [{ board: 1, times: 1, strips: [{ lane: 0, picks: [[0, 1]] }] }];
    expect(onScarceBoards(problem, new Effort(Infinity))).toEqual({ layouts, left: [0, 4], free: [Infinity, 1] });
    expect(onScarceBoards({ ...problem, items: [{ size: 19, count: 3, lanes: [0] }] }, new Effort(Infinity))).toBeUndefined();
    expect(onScarceBoards({ ...problem, items: [{ size: 9, count: 3, lanes: [0] }] }, new Effort(Infinity)), 'nothing is scarce for it').toBeUndefined();
});

test('what a board is cut into is told in the order of the pieces', () => {
    const items = [8, 12, 10].map(size => ({ size, count: 1, lanes: [0] })), boards = [{ capacity: 30, cost: 9, available: 1, across: 1 }];
    const { layouts } = onScarceBoards({ items, strips: [], boards }, new Effort(Infinity))!;
    expect(layouts).toEqual([{ board: 0, times: 1, strips: [{ lane: 0, picks: [[0, 1], [1, 1], [2, 1]] }] }]);
});

test('very many pieces are not gone through', () => {
    const effort = new Effort(Infinity), items = [{ size: 3, count: 200, lanes: [0] }];
    expect(onScarceBoards({ items, strips: [], boards: [{ capacity: 10, cost: 1, available: 10, across: 1 }] }, effort)).toBeUndefined();
    expect(effort.spent).toBe(0);
    // 40 pieces of eight lengths, one too many for their boards: it comes to an end
    const odd = Array.from({ length: 8 }, (_, i) => ({ size: 11 + i, count: 5, lanes: [0] }));
    expect(onScarceBoards({ items: odd, strips: [], boards: [{ capacity: 39, cost: 1, available: 15, across: 1 }] }, effort)).toBeUndefined();
    expect(effort.spent).toBeLessThan(1e6);
});
