import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sizeOf } from '../../../src/cutting/solve/layouts.ts';
import { withLongerOffcuts } from '../../../src/cutting/solve/offcuts.ts';
import type { CuttingProblem, Layout } from '../../../src/cutting/solve/problem.ts';
import { checkLayouts } from './check-layouts.ts';
import { problemOfPieces, quick } from './problems.ts';
import { runs } from '../../support/full.ts';

const boards = [{ capacity: 100, cost: 10, available: null }];
const rooms = (problem: CuttingProblem, layouts: readonly Layout[]): number[] =>
    layouts.flatMap(({ board, strips, times }) =>
        Array.from({ length: times }, () => strips.map(({ picks }) => problem.boards[board]!.capacity - sizeOf(problem, picks))).flat()).sort((a, b) => b - a);

describe('of two plans at one cost', () => {
    test('the one with the longer offcut is taken: 60 and 0 rather than 30 and 30', () => {
        const problem = problemOfPieces([40, 40, 30, 30], boards);
        const two: Layout[] = [{ board: 0, times: 2, strips: [{ lane: 0, picks: [[0, 1], [1, 1]] }] }];
        const better = withLongerOffcuts(problem, two, 20, 1e6);
        expect(checkLayouts(problem, better)).toBe(20);
        expect(rooms(problem, two)).toEqual([30, 30]);
        expect(rooms(problem, better)).toEqual([60, 0]);
    });

    test('where that is alike, the one whose boards hold fewer lengths: 45 and 45, 44 and 44, rather than twice 45 and 44', () => {
        const problem = problemOfPieces([45, 45, 44, 44], boards);
        const two: Layout[] = [{ board: 0, times: 2, strips: [{ lane: 0, picks: [[0, 1], [1, 1]] }] }];
        const better = withLongerOffcuts(problem, two, 20, 1e6);
        expect(checkLayouts(problem, better)).toBe(20);
        expect(better.map(({ strips }) => strips[0]!.picks)).toEqual([[[1, 2]], [[0, 2]]]);
        expect(rooms(problem, better)).toEqual([12, 10]);
    });

    test('lengths are counted on both boards: what is one less on the one and one more on the other is left as it is', () => {
        // 60 and 30 beside 30, 28 and 28: one of 30 for one of 28 would be 60 and 28 beside 30, 30 and 28
        const problem = problemOfPieces([60, 30, 30, 28, 28], boards);
        const ways = [{ lane: 0, picks: [[0, 1], [1, 1]] }, { lane: 0, picks: [[1, 1], [2, 2]] }] as const;
        const two: Layout[] = ways.map(strip => ({ board: 0, times: 1, strips: [strip] }));
        expect(withLongerOffcuts(problem, two, 20, 1e6)).toEqual(two);
    });

    test('for any plan: the same pieces, no dearer, kept offcuts at least as good', () => {
        fc.assert(fc.property(fc.array(
            fc.integer({ min: 3, max: 90 }), { minLength: 1, maxLength: 40 },
        ), fc.integer({ min: 1, max: 60 }), (pieces, shortest) => {
            const problem = problemOfPieces(pieces, [...boards, { capacity: 70, cost: 8, available: null }, { capacity: 50, cost: 0, available: 2 }]);
            const before = quick(problem);
            const after = withLongerOffcuts(problem, before, shortest, 1e6);
            expect(checkLayouts(problem, after)).toBeLessThanOrEqual(checkLayouts(problem, before));
            // boards that nothing is left on are whole again: their room counts too
            const whole = (layouts: readonly Layout[]): number =>
                rooms(problem, layouts).filter(room => room >= shortest).reduce((sum, room) => sum + room * room, 0);
            const emptied = before.flatMap(l => Array.from({ length: l.times }, () => problem.boards[l.board]!.capacity)).reduce((a, b) =>
                a + b, 0) - after.flatMap(l => Array.from({ length: l.times }, () => problem.boards[l.board]!.capacity)).reduce((a, b) => a + b, 0);
            if (emptied === 0) expect(whole(after)).toBeGreaterThanOrEqual(whole(before));
            const takenUp = (layouts: readonly Layout[]): number =>
                layouts.reduce((sum, { strips, times }) => sum + times * strips.reduce((n, { picks }) => n + picks.length, 0), 0);
            if (emptied === 0 && whole(after) === whole(before)) expect(takenUp(after)).toBeLessThanOrEqual(takenUp(before));
        }), { seed: 30, numRuns: runs(300) });
    });
});
